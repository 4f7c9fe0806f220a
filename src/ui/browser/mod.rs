//! What the browser offers, one file a capability. Nothing here knows about water heaters' looks; each
//! file works, or says that it does not, when the browser forbids it.

pub mod advice;
pub mod device;
pub mod download;
pub mod focus;
pub mod history;
pub mod jobs;
pub mod media;
pub mod offline;
pub mod resize;
pub mod share;
pub mod storage;
pub mod wake;
