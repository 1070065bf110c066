//! Whether a JPEG that is stored row by row has data for all its blocks, read without making pixels.
//!
//! A copy that was cut short and closed again by an end marker decodes to its end: what no data came
//! for is filled. The blocks that the scan codes are counted here instead (ITU-T T.81, F.2.2).

use std::collections::BTreeMap;

/// A Huffman table as it is stored: how many codes of each length, and what they stand for.
struct Table {
    counts: [u8; 16],
    symbols: Vec<u8>,
}

/// What the header says of the scan.
#[derive(Default)]
struct Header {
    size: (usize, usize),
    /// Each colour's id and its blocks across and down in a unit.
    colours: Vec<(u8, usize, usize)>,
    /// By class and id, as one byte.
    tables: BTreeMap<u8, Table>,
    /// Units between restarts; 0 for none.
    restart: usize,
}

/// The coded data as bits; none where it has ended.
struct Bits<'a> {
    rest: &'a [u8],
    byte: u8,
    left: u8,
}

/// Why blocks could not be counted to their end.
enum Stop {
    /// The data ended.
    Ended,
    /// It is coded in a way that is not followed here.
    Unknown,
}

/// False where the scan ends before its last block; true too where it can't be followed.
pub(super) fn has_all_blocks(bytes: &[u8]) -> bool {
    let Some((header, scan, data)) = header(bytes) else { return true };
    !matches!(count(&header, scan, data), Some(Err(Stop::Ended)))
}

/// All that comes before the coded data, the scan's own segment, and the data.
fn header(bytes: &[u8]) -> Option<(Header, &[u8], &[u8])> {
    let (mut at, mut header) = (2, Header::default());
    loop {
        let &[mark, marker, high, low] = bytes.get(at..at + 4)? else { return None };
        if mark != 0xff {
            return None;
        }
        if marker == 0xff {
            at += 1;
            continue;
        }
        let end = at + 2 + usize::from(u16::from_be_bytes([high, low]));
        let segment = bytes.get(at + 4..end)?;
        match marker {
            0xc0 | 0xc1 => frame(&mut header, segment)?,
            0xc2..=0xc3 | 0xc5..=0xc7 | 0xc9..=0xcb | 0xcd..=0xcf => return None,
            0xc4 => tables(&mut header, segment)?,
            0xdd => header.restart = usize::from(u16::from_be_bytes([*segment.first()?, *segment.get(1)?])),
            0xda => return Some((header, segment, bytes.get(end..)?)),
            _ => {}
        }
        at = end;
    }
}

fn frame(header: &mut Header, segment: &[u8]) -> Option<()> {
    let &[8, h1, h0, w1, w0, _] = segment.get(..6)? else { return None };
    header.size = (u16::from_be_bytes([w1, w0]).into(), u16::from_be_bytes([h1, h0]).into());
    let colours = segment.get(6..)?.chunks_exact(3);
    let colours = colours.filter_map(|colour| match *colour {
        [id, sampling, _] => Some((id, usize::from(sampling >> 4), usize::from(sampling & 15))),
        _ => None,
    });
    header.colours = colours.collect();
    Some(())
}

fn tables(header: &mut Header, mut segment: &[u8]) -> Option<()> {
    while let Some((id, rest)) = segment.split_first() {
        let counts: [u8; 16] = rest.get(..16)?.try_into().ok()?;
        let many: usize = counts.iter().map(|count| usize::from(*count)).sum();
        header.tables.insert(*id, Table { counts, symbols: rest.get(16..16 + many)?.to_vec() });
        segment = rest.get(16 + many..)?;
    }
    Some(())
}

/// Goes through every block of the one scan; none where its header can't be followed.
fn count(header: &Header, scan: &[u8], data: &[u8]) -> Option<Result<(), Stop>> {
    let (many, rest) = scan.split_first()?;
    if usize::from(*many) != header.colours.len() || header.colours.is_empty() {
        return None;
    }
    let alone = header.colours.len() == 1;
    let mut blocks = Vec::new();
    for (colour, pair) in header.colours.iter().zip(rest.chunks_exact(2)) {
        let &[id, use_of] = pair else { return None };
        let (dc, ac) = (header.tables.get(&(use_of >> 4))?, header.tables.get(&(0x10 | (use_of & 15)))?);
        let each = if alone { 1 } else { colour.1 * colour.2 };
        if id != colour.0 || !(1..=16).contains(&each) {
            return None;
        }
        blocks.extend(std::iter::repeat_n((dc, ac), each));
    }
    let most = |of: fn(&(u8, usize, usize)) -> usize| header.colours.iter().map(of).max().unwrap_or(1);
    let (across, down) = if alone { (8, 8) } else { (8 * most(|colour| colour.1), 8 * most(|colour| colour.2)) };
    let units = header.size.0.div_ceil(across) * header.size.1.div_ceil(down);
    let mut bits = Bits { rest: data, byte: 0, left: 0 };
    Some((0..units).try_for_each(|unit| {
        if header.restart > 0 && unit > 0 && unit % header.restart == 0 {
            bits.restart()?;
        }
        blocks.iter().try_for_each(|(dc, ac)| block(&mut bits, dc, ac))
    }))
}

/// One block: how far its mean is from the last one's, then its other coefficients.
fn block(bits: &mut Bits<'_>, dc: &Table, ac: &Table) -> Result<(), Stop> {
    let long = bits.symbol(dc)?;
    bits.skip(long)?;
    let mut at = 1;
    while at < 64 {
        let symbol = bits.symbol(ac)?;
        let (run, long) = (symbol >> 4, symbol & 15);
        match (run, long) {
            (15, 0) => at += 16,
            (_, 0) => return Ok(()),
            _ => {
                at += usize::from(run) + 1;
                bits.skip(long)?;
            }
        }
    }
    Ok(())
}

impl Bits<'_> {
    fn bit(&mut self) -> Result<bool, Stop> {
        if self.left == 0 {
            (self.byte, self.rest) = match *self.rest {
                [0xff, 0, ref rest @ ..] => (0xff, rest),
                [0xff, ..] | [] => return Err(Stop::Ended),
                [byte, ref rest @ ..] => (byte, rest),
            };
            self.left = 8;
        }
        self.left -= 1;
        Ok((self.byte >> self.left) & 1 == 1)
    }

    fn skip(&mut self, many: u8) -> Result<(), Stop> {
        (0..many).try_for_each(|_| self.bit().map(|_| ()))
    }

    /// The next symbol by a table's codes, which count up within each length (T.81, C.2 and F.2.2.3).
    fn symbol(&mut self, table: &Table) -> Result<u8, Stop> {
        let (mut code, mut first, mut before) = (0_usize, 0_usize, 0_usize);
        for count in table.counts {
            code = (code << 1) | usize::from(self.bit()?);
            let count = usize::from(count);
            if code < first + count {
                let symbol = code.checked_sub(first).and_then(|within| table.symbols.get(before + within));
                return symbol.copied().ok_or(Stop::Unknown);
            }
            (before, first) = (before + count, (first + count) << 1);
        }
        Err(Stop::Unknown)
    }

    /// Past the marker after which counting begins anew.
    fn restart(&mut self) -> Result<(), Stop> {
        self.left = 0;
        match *self.rest {
            [0xff, 0xd0..=0xd7, ref rest @ ..] => {
                self.rest = rest;
                Ok(())
            }
            [0xff, 0xd9, ..] | [] => Err(Stop::Ended),
            _ => Err(Stop::Unknown),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jpeg_encoder::{ColorType, Encoder, SamplingFactor};

    fn photo(sampling: SamplingFactor, restart: Option<u16>, colours: ColorType) -> Vec<u8> {
        let each = if matches!(colours, ColorType::Luma) { 1 } else { 3 };
        let pixels: Vec<u8> = (0..150_usize * 117 * each).map(|at| (at * 37 % 251) as u8).collect();
        let mut bytes = Vec::new();
        let mut encoder = Encoder::new(&mut bytes, 80);
        encoder.set_sampling_factor(sampling);
        if let Some(restart) = restart {
            encoder.set_restart_interval(restart);
        }
        encoder.encode(&pixels, 150, 117, colours).unwrap();
        bytes
    }

    /// Whole photos of an independent encoder, and the same cut to a part and closed again.
    #[test]
    fn a_scan_that_was_cut_and_closed_again_lacks_blocks() {
        for (sampling, restart, colours) in [
            (SamplingFactor::R_4_2_0, None, ColorType::Rgb),
            (SamplingFactor::R_4_4_4, None, ColorType::Rgb),
            (SamplingFactor::R_4_2_2, Some(5), ColorType::Rgb),
            (SamplingFactor::R_4_4_4, None, ColorType::Luma),
        ] {
            let whole = photo(sampling, restart, colours);
            assert!(has_all_blocks(&whole));
            let start = header(&whole).map(|(.., data)| whole.len() - data.len()).unwrap();
            for part in 0..20 {
                let kept = start + (whole.len() - start) * part / 20;
                let closed = [whole.get(..kept).unwrap(), &[0xff, 0xd9]].concat();
                assert!(!has_all_blocks(&closed), "{part}/20");
            }
        }
    }

    #[test]
    fn what_cannot_be_followed_is_left_to_the_decoder() {
        assert!(has_all_blocks(b"\xff\xd8\xff\xd9") && has_all_blocks(b"no picture"));
    }
}
