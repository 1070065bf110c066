//! Colours come out as LittleCMS, an independent colour engine, brings them to sRGB.

use super::{Desk, numbers};
use moxcms::ColorProfile;

/// Draws 48 patches, tags them with the profile in `profile.icc`, and saves them to the name given.
const PATCHES: &str = "
random.seed(3)
colours = [(255, 0, 0), (0, 255, 0), (0, 0, 255), (0, 255, 255), (255, 255, 0), (128, 128, 128), (255, 255, 255)]
colours += [tuple(random.randrange(256) for _ in range(3)) for _ in range(41)]
mode = sys.argv[2]
board = Image.new('RGB', (8 * 64, 6 * 64))
for at, colour in enumerate(colours):
    board.paste(colour, ((at % 8) * 64, (at // 8) * 64, (at % 8) * 64 + 64, (at // 8) * 64 + 64))
board = board.convert(mode)
options = {'quality': 100, 'subsampling': 0} if sys.argv[1].endswith('jpg') else {'lossless': True}
board.save(sys.argv[1], icc_profile=open('profile.icc', 'rb').read(), **options)
";

/// Prints, for each patch, the greatest difference of our rendition from LittleCMS's answer, then
/// the greatest difference between that answer and the colours as stored.
const DIFFERENCES: &str = "
stored = Image.open(sys.argv[1])
profile = ImageCms.ImageCmsProfile(io.BytesIO(stored.info['icc_profile']))
reference = ImageCms.profileToProfile(stored, profile, ImageCms.createProfile('sRGB'), outputMode='RGB')
ours, plain = Image.open(sys.argv[2]), stored.convert('RGB')
def apart(one, other, at):
    return max(abs(a - b) for a, b in zip(one.getpixel(at), other.getpixel(at)))
centres = [(x * 64 + 32, y * 64 + 32) for y in range(6) for x in range(8)]
print(max(apart(ours, reference, at) for at in centres), max(apart(plain, reference, at) for at in centres))
";

/// Prepares patches with a profile; answers how far we and the colours as stored are from LittleCMS.
fn apart(desk: &Desk, profile: &[u8], name: &str, mode: &str) -> [f64; 2] {
    std::fs::File::create(desk.path("profile.icc"))
        .and_then(|mut file| std::io::Write::write_all(&mut file, profile))
        .expect("room for the profile");
    desk.python(PATCHES, &[name, mode]);
    let made = desk.prepare(name, &[512]);
    assert!(!made.unread_profile, "{name}");
    let found = numbers(&desk.python(DIFFERENCES, &[name, &super::text(&made.files[0].path)]));
    [found[0], found[1]]
}

#[test]
fn wide_colours_match_littlecms_in_every_format_that_carries_a_profile() {
    let desk = Desk::new();
    let profiles = [("p3", ColorProfile::new_display_p3(), 30.0), ("adobe", ColorProfile::new_adobe_rgb(), 30.0)];
    for (space, profile, seen) in profiles {
        let profile = profile.encode().expect("a profile");
        for ending in ["jpg", "png", "webp", "tiff"] {
            let name = format!("{space}.{ending}");
            let [ours, unmanaged] = apart(&desk, &profile, &name, "RGB");
            // Of 255: what JPEG at quality 80 itself does to a flat patch.
            assert!(ours <= 5.0, "{name}: {ours} from LittleCMS");
            assert!(unmanaged > seen, "{name}: the profile would hardly matter ({unmanaged})");
        }
    }
}

#[test]
fn greys_with_a_profile_match_littlecms() {
    let desk = Desk::new();
    let profile = ColorProfile::new_gray_with_gamma(1.4).encode().expect("a profile");
    for ending in ["jpg", "png", "tiff"] {
        let [ours, unmanaged] = apart(&desk, &profile, &format!("grey.{ending}"), "L");
        assert!(ours <= 4.0, "{ending}: {ours} from LittleCMS");
        assert!(unmanaged > 15.0, "{ending}: {unmanaged}");
    }
}

#[test]
fn a_photo_with_a_broken_profile_is_shown_and_told() {
    let desk = Desk::new();
    desk.python("photo(200, 150).save('broken.jpg', icc_profile=b'no profile at all' * 20)", &[]);
    assert!(desk.prepare("broken.jpg", &[100]).unread_profile);
    // The cache remembers it too.
    assert!(desk.prepare("broken.jpg", &[100]).unread_profile);
}
