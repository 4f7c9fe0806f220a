//! The page's Web Worker.
