//! Any picture's colours to sRGB (IEC 61966-2-1), by the profile that its file carries.

use moxcms::{ColorProfile, DataColorSpace, Layout, TransformOptions};

use super::raster::{Raster, Samples};

/// A picture in sRGB, and whether its profile had to be left aside.
pub(super) struct Coloured {
    pub(super) raster: Raster,
    pub(super) unread_profile: bool,
}

/// Brings `raster` to sRGB. Without a profile, colours are taken as sRGB already; so they are
/// when the profile can't be read or is not for such samples, and then that is told.
pub(super) fn to_srgb(raster: Raster, profile: Option<&[u8]>) -> Coloured {
    let Some(profile) = profile else {
        return Coloured { raster: plain_rgb(raster), unread_profile: false };
    };
    match managed(&raster, profile) {
        Some(raster) => Coloured { raster, unread_profile: false },
        None => Coloured { raster: plain_rgb(raster), unread_profile: true },
    }
}

fn managed(raster: &Raster, profile: &[u8]) -> Option<Raster> {
    let profile = ColorProfile::new_from_slice(profile).ok()?;
    let widened;
    let (raster, layout) = match (raster.samples, profile.color_space) {
        (Samples::Grey, DataColorSpace::Gray) => (raster, Layout::Gray),
        (Samples::Rgb, DataColorSpace::Rgb) => (raster, Layout::Rgb),
        // Inks use the layout of any four channels.
        (Samples::Cmyk, DataColorSpace::Cmyk) => (raster, Layout::Rgba),
        (Samples::Grey, DataColorSpace::Rgb) => {
            widened = plain_rgb(raster.clone());
            (&widened, Layout::Rgb)
        }
        _ => return None,
    };
    let srgb = ColorProfile::new_srgb();
    let options = TransformOptions::default();
    let transform = profile.create_transform_8bit(layout, &srgb, Layout::Rgb, options).ok()?;
    let mut pixels = vec![0; raster.pixels.len() / raster.samples.channels() * 3];
    transform.transform(&raster.pixels, &mut pixels).ok()?;
    Some(Raster { samples: Samples::Rgb, pixels, ..*raster })
}

/// Three channels from one or four, without a profile.
fn plain_rgb(raster: Raster) -> Raster {
    let pixels = match raster.samples {
        Samples::Rgb => return raster,
        Samples::Grey => raster.pixels.iter().flat_map(|&grey| [grey; 3]).collect(),
        Samples::Cmyk => {
            let (inks, _) = raster.pixels.as_chunks::<4>();
            inks.iter().flat_map(|&[c, m, y, k]| [c, m, y].map(|ink| uninked(ink, k))).collect()
        }
    };
    Raster { samples: Samples::Rgb, pixels, ..raster }
}

/// What white is left under an ink and black, as the usual rule without a profile has it
/// (PostScript Language Reference, third edition, 7.2.4, multiplied in place of added).
fn uninked(ink: u8, black: u8) -> u8 {
    let light = u32::from(255 - ink) * u32::from(255 - black);
    ((light + 127) / 255) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one(samples: Samples, pixels: &[u8]) -> Raster {
        Raster { width: 1, height: 1, samples, pixels: pixels.to_vec() }
    }

    #[test]
    fn a_green_of_display_p3_past_srgb_is_clipped_and_a_grey_stays() {
        let profile = ColorProfile::new_display_p3().encode().unwrap();
        let grey = to_srgb(one(Samples::Rgb, &[119, 119, 119]), Some(&profile));
        assert!(grey.raster.pixels.iter().all(|v| v.abs_diff(119) <= 1), "{:?}", grey.raster);
        let green = to_srgb(one(Samples::Rgb, &[0, 255, 0]), Some(&profile));
        assert_eq!(green.raster.pixels, [0, 255, 0]);
    }

    #[test]
    fn a_profile_that_cannot_be_read_is_told_and_the_colours_stay() {
        let kept = to_srgb(one(Samples::Rgb, &[1, 2, 3]), Some(b"not a profile"));
        assert!(kept.unread_profile);
        assert_eq!(kept.raster.pixels, [1, 2, 3]);
    }

    #[test]
    fn full_black_ink_is_black_and_no_ink_is_white() {
        let black = to_srgb(one(Samples::Cmyk, &[0, 0, 0, 255]), None);
        assert_eq!(black.raster.pixels, [0, 0, 0]);
        let white = to_srgb(one(Samples::Cmyk, &[0, 0, 0, 0]), None);
        assert_eq!(white.raster.pixels, [255, 255, 255]);
    }
}
