//! A square of light and dark modules that a camera reads (ISO/IEC 18004), of an address with a job in it.

use qrcodegen::{QrCode, QrCodeEcc, Version};

/// A square code.
pub struct Square(QrCode);

/// The text is longer than a code can hold: 2,953 bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("longer than a square code holds")]
pub struct TooLong;

impl Square {
    /// Modules on a side, without the light border of four that belongs around it.
    pub fn side(&self) -> usize {
        usize::try_from(self.0.size()).unwrap_or(0)
    }

    /// Version by the standard: 1 is 21 modules on a side, each further one four more.
    pub fn version(&self) -> u8 {
        self.0.version().value()
    }

    /// Whether a module is dark; outside the square none is.
    pub fn dark(&self, x: usize, y: usize) -> bool {
        let place = |v: usize| i32::try_from(v).unwrap_or(-1);
        self.0.get_module(place(x), place(y))
    }
}

/// The code of a text, as small as it can be with low error correction: it is read off a clean screen.
///
/// # Errors
/// Refuses a text that is too long.
pub fn modules(text: &str) -> Result<Square, TooLong> {
    let bytes = [qrcodegen::QrSegment::make_bytes(text.as_bytes())];
    QrCode::encode_segments_advanced(&bytes, QrCodeEcc::Low, Version::MIN, Version::MAX, None, true)
        .map(Square)
        .map_err(|_| TooLong)
}
