//! Photographs made ready, judged by programs that had no part in it: Pillow with LittleCMS
//! (`python3-pil`), ExifTool (`libimage-exiftool-perl`) and libheif (`libheif-examples`).

mod colour;
mod faults;
#[cfg(feature = "heic")]
mod heic;
mod likeness;
mod metadata;
mod sharing;

use std::path::{Path, PathBuf};
use std::process::Command;

use bookmatch::pictures::{Cache, PictureError, Renditions, Source, prepare};

/// A folder of photos, and a cache beside it.
struct Desk {
    folder: tempfile::TempDir,
    cache: Cache,
}

/// Python that every script starts with: a drawn photo, and how far two pictures are apart.
const PRELUDE: &str = r#"
import io, os, random, struct, sys, zlib
from PIL import Image, ImageChops, ImageCms, ImageDraw, ImageFilter, ImageOps

def photo(width, height):
    random.seed(7)
    across = Image.linear_gradient('L').rotate(90).resize((width, height))
    down = Image.linear_gradient('L').resize((width, height))
    round_ = Image.radial_gradient('L').resize((width, height))
    picture = Image.merge('RGB', (across, down, round_))
    draw = ImageDraw.Draw(picture)
    for _ in range(60):
        x, y = random.randrange(width), random.randrange(height)
        size = random.randrange(4, max(5, width // 6))
        colour = tuple(random.randrange(256) for _ in range(3))
        draw.ellipse((x, y, x + size, y + size * 2 // 3), fill=colour)
    # One corner tells which way up it is.
    draw.rectangle((0, 0, width // 5, height // 8), fill=(250, 20, 20))
    return picture.filter(ImageFilter.GaussianBlur(1.2))

def psnr(one, other):
    import math
    assert one.size == other.size, (one.size, other.size)
    counts = ImageChops.difference(one.convert('RGB'), other.convert('RGB')).histogram()
    total = sum(count * (level % 256) ** 2 for level, count in enumerate(counts))
    return 99.0 if total == 0 else 10 * math.log10(255 ** 2 * one.width * one.height * 3 / total)

# A PNG by hand (5.3, 11.2), for what Pillow doesn't write: 16 bits a channel, and lies.
def chunk(name, body):
    return struct.pack('>I', len(body)) + name + body + struct.pack('>I', zlib.crc32(name + body))
def png(width, height, *chunks, bits=8):
    head = struct.pack('>IIBBBBB', width, height, bits, 2, 0, 0, 0)
    return b'\x89PNG\r\n\x1a\n' + chunk(b'IHDR', head) + b''.join(chunks)
def deep_png(picture, between=0):
    width, height = picture.size
    sample = lambda x, y: (min(65535, c * 257 + between * (x % 2)) for c in picture.getpixel((x, y)))
    rows = (b'\0' + b''.join(struct.pack('>3H', *sample(x, y)) for x in range(width)) for y in range(height))
    return png(width, height, chunk(b'IDAT', zlib.compress(b''.join(rows))), chunk(b'IEND', b''), bits=16)
"#;

impl Desk {
    fn new() -> Desk {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let cache = Cache::open(&folder.path().join("cache")).expect("a cache");
        Desk { folder, cache }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// What a Python script prints, run in the folder after the prelude.
    fn python(&self, script: &str, arguments: &[&str]) -> String {
        let script = format!("{PRELUDE}\n{script}");
        let mut command = Command::new("/usr/bin/python3");
        command.args(["-c", &script]).args(arguments).current_dir(self.folder.path());
        ran(command)
    }

    /// What another program prints, run in the folder.
    fn ask(&self, program: &str, arguments: &[&str]) -> String {
        let mut command = Command::new(program);
        command.args(arguments).current_dir(self.folder.path());
        ran(command)
    }

    fn try_prepare(&self, name: &str, widths: &[u32]) -> Result<Renditions, PictureError> {
        let source = Source::file(name, self.path(name));
        prepare(&self.cache, &[source], widths, &|_| ()).remove(0)
    }

    fn prepare(&self, name: &str, widths: &[u32]) -> Renditions {
        self.try_prepare(name, widths).unwrap_or_else(|fault| panic!("{name}: {fault}"))
    }

    /// The single rendition's file, for a script.
    fn rendition(&self, name: &str, width: u32) -> String {
        text(&self.prepare(name, &[width]).files[0].path)
    }
}

fn ran(mut command: Command) -> String {
    let program = command.get_program().to_string_lossy().into_owned();
    let output = command.output().unwrap_or_else(|fault| panic!("`{program}` is needed to look at pictures: {fault}"));
    assert!(output.status.success(), "{program}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

/// The numbers of a script's output.
fn numbers(output: &str) -> Vec<f64> {
    output.split_whitespace().map(|word| word.parse().expect("a number")).collect()
}
