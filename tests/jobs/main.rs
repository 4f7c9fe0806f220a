//! Jobs as kept, sent and exchanged: round trips, damage, migration, bounds.

mod any;
mod done;
mod kept;
mod link;
mod merge;
mod offer;
mod qr;
mod schema;
