//! Nothing that a photo knows of place, time, camera or people reaches a page: searched by ExifTool.

use super::{Desk, text};

/// Words hidden in a photo's metadata; none may be left.
const SECRETS: [&str; 4] = ["Wexley", "QuarrelCam", "loading bay", "Trimblehurst"];

/// A photo with a place, a name, a camera, a comment, a profile, a thumbnail and an XMP packet.
fn telling_photo(desk: &Desk, name: &str) {
    desk.python(
        "
picture = photo(900, 700)
profile = ImageCms.ImageCmsProfile(ImageCms.createProfile('sRGB')).tobytes()
picture.save(sys.argv[1], icc_profile=profile)
picture.resize((90, 70)).save('thumbnail.jpg')
",
        &[name],
    );
    let comment = if name.ends_with("png") { "-PNG:Comment=loading bay" } else { "-Comment=loading bay" };
    let mut arguments = vec![
        "-q",
        "-overwrite_original",
        "-EXIF:GPSLatitude=51.5",
        "-EXIF:GPSLatitudeRef=N",
        "-EXIF:GPSLongitude=0.5",
        "-EXIF:GPSLongitudeRef=E",
        "-EXIF:Artist=Wexley",
        "-EXIF:Model=QuarrelCam",
        "-EXIF:Orientation#=6",
        "-XMP-dc:Creator=Wexley",
        "-XMP-photoshop:City=Trimblehurst",
    ];
    if name.ends_with("jpg") {
        arguments.extend(["-IPTC:City=Trimblehurst", "-ThumbnailImage<=thumbnail.jpg"]);
    }
    if !name.ends_with("webp") {
        arguments.push(comment);
    }
    arguments.push(name);
    desk.ask("exiftool", &arguments);
}

#[test]
fn no_metadata_of_any_kind_is_left() {
    let desk = Desk::new();
    for name in ["telling.jpg", "telling.png", "telling.webp", "telling.tiff"] {
        telling_photo(&desk, name);
        let before = desk.ask("exiftool", &["-a", "-G1", "-s", name]);
        for found in ["GPSLatitude", "Wexley", "QuarrelCam", "Trimblehurst", "[ICC"] {
            assert!(before.contains(found), "{name} should carry {found}:\n{before}");
        }
        let made = desk.prepare(name, &[600, 300]);
        assert_eq!((made.width, made.height), (700, 900), "{name} stands upright");
        for file in &made.files {
            let after = desk.ask("exiftool", &["-a", "-u", "-U", "-G1", "-s", &text(&file.path)]);
            let kept: Vec<&str> = after.lines().filter(|line| !is_plain(line)).collect();
            assert_eq!(kept, [""; 0], "{name} at {}", file.width);
            let bytes = std::fs::read(&file.path).expect("the rendition");
            for secret in SECRETS {
                assert!(!bytes.windows(secret.len()).any(|part| part == secret.as_bytes()), "{name}: {secret}");
            }
        }
    }
}

/// Whether a line of ExifTool's tells of the file and its coding alone.
fn is_plain(line: &str) -> bool {
    let from = ["[ExifTool]", "[System]", "[JFIF]", "[Composite]"];
    let coding = [
        "FileType",
        "FileTypeExtension",
        "MIMEType",
        "ImageWidth",
        "ImageHeight",
        "EncodingProcess",
        "BitsPerSample",
        "ColorComponents",
        "YCbCrSubSampling",
    ];
    let word = line.strip_prefix("[File]").and_then(|rest| rest.split_whitespace().next());
    from.iter().any(|group| line.starts_with(group)) || word.is_some_and(|word| coding.contains(&word))
}

#[test]
fn the_same_photo_with_and_without_metadata_gives_the_same_files() {
    let desk = Desk::new();
    desk.python(
        "
exif = Image.Exif()
exif[315] = 'Wexley'
picture = photo(500, 400)
picture.save('told.jpg', quality=90, exif=exif, comment='loading bay')
picture.save('plain.jpg', quality=90)
",
        &[],
    );
    let (told, plain) = (desk.prepare("told.jpg", &[300]), desk.prepare("plain.jpg", &[300]));
    assert_ne!(told.digest, plain.digest);
    assert_eq!(told.files, plain.files);
}
