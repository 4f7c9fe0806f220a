//! Square codes, read by a second library.

use crate::link::{full, sent_link, typical};
use tankful::job::qr::{Square, modules};

fn read(square: &Square) -> String {
    const SCALE: usize = 4;
    let side = (square.side() + 8) * SCALE;
    let dark = |x: usize, y: usize| {
        let inside = |v: usize| (v / SCALE).checked_sub(4);
        matches!((inside(x), inside(y)), (Some(x), Some(y)) if square.dark(x, y))
    };
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| if dark(x, y) { 0 } else { 255 });
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1, "one square is seen");
    grids[0].decode().expect("it reads").1
}

#[test]
fn another_reader_reads_what_is_drawn() {
    let address = "https://example.org/tankful/";
    for (what, link, most) in [("typical", sent_link(&typical()), 12), ("full", sent_link(&full()), 15)] {
        let text = format!("{address}#{link}");
        let square = modules(&text).expect("it fits");
        println!(
            "{what}: {} characters, version {}, {} modules",
            text.len(),
            square.version(),
            square.side()
        );
        assert_eq!(read(&square), text);
        assert!(square.version() <= most, "{what} takes version {}", square.version());
    }
    assert!(!modules("x").expect("it fits").dark(1_000, 1_000));
    assert!(modules(&"x".repeat(2_953)).is_ok() && modules(&"x".repeat(2_954)).is_err());
}
