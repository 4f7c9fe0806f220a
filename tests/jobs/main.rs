//! Jobs as kept, sent and exchanged: round trips, damage, migration, bounds.

mod any;
mod kept;
mod link;
mod merge;
mod offer;
mod qr;
mod schema;
