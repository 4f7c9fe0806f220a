"""Draws the PNG icons from icon.svg: Chromium renders, Pillow reduces the colours. Their bytes are part of
what a first visit downloads. Run where both are there: `python3 public/icons.py`; the results are checked in."""

import pathlib
import subprocess
import tempfile

from PIL import Image

HERE = pathlib.Path(__file__).parent

for size in (192, 512):
    with tempfile.TemporaryDirectory() as folder:
        page, shot = pathlib.Path(folder, "icon.html"), pathlib.Path(folder, "icon.png")
        svg = (HERE / "icon.svg").read_text(encoding="utf-8")
        page.write_text(f"<style>*{{margin:0}}svg{{display:block;width:{size}px}}</style>{svg}", encoding="utf-8")
        subprocess.run(
            ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
             "--force-color-profile=srgb", f"--user-data-dir={folder}/profile", f"--window-size={size},{size}",
             f"--screenshot={shot}", page.as_uri()],
            check=True, stderr=subprocess.DEVNULL)
        picture = Image.open(shot).convert("RGB").crop((0, 0, size, size))
        reduced = picture.quantize(24, dither=Image.Dither.NONE)
        reduced.save(HERE / f"icon-{size}.png", optimize=True)
