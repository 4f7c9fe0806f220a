//! The page's entry: mounts the page in a window, or serves as its Web Worker.
fn main() {
    #[cfg(target_arch = "wasm32")]
    tankful::ui::start();
    #[cfg(not(target_arch = "wasm32"))]
    eprintln!("This binary is the browser page. Run `cargo xtask serve`, or the headless command `tankful`.");
}
