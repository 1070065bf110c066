"""What a telephone does to a picture: turned with a tag, in a wide colour space, with place and owner written in."""
import os
import struct
import numpy as np
from PIL import Image

P3_TO_XYZ = ((.51512, .29198, .15710), (.24120, .69225, .06657), (-.00105, .04189, .78407))  # adapted to D50
SRGB_TO_P3 = np.array([[.8225, .1774, 0], [.0332, .9669, 0], [.0171, .0724, .9108]])


def text(tag, s):
    """A multi-localized text element, or a plain one for the copyright line."""
    words = s.encode('utf-16-be')
    return b'mluc\0\0\0\0' + struct.pack('>II', 1, 12) + b'enUS' + struct.pack('>II', len(words), 28) + words


def display_p3():
    """An ICC version 4 profile with the P3 primaries, a D65 white adapted to D50, and the sRGB curve."""
    s15 = lambda v: struct.pack('>i', round(v * 65536))
    xyz = lambda v: b'XYZ \0\0\0\0' + b''.join(s15(c) for c in v)
    curve = b'para\0\0\0\0' + struct.pack('>HH', 3, 0) + b''.join(s15(v) for v in (2.4, 1 / 1.055, .055 / 1.055, 1 / 12.92, .04045))
    column = lambda i: xyz([row[i] for row in P3_TO_XYZ])
    adapt = b'sf32\0\0\0\0' + b''.join(s15(v) for v in (1.04788, .02292, -.05022, .02959, .99048, -.01707, -.00925, .01508, .75168))
    tags = [(b'desc', text('desc', 'Display P3')), (b'cprt', text('cprt', 'No copyright, use freely')), (b'wtpt', xyz((.96420, 1, .82491))),
            (b'rXYZ', column(0)), (b'gXYZ', column(1)), (b'bXYZ', column(2)), (b'rTRC', curve), (b'gTRC', curve), (b'bTRC', curve),
            (b'chad', adapt)]
    table, data, at = b'', b'', 128 + 4 + 12 * len(tags)
    for name, body in tags:
        body += b'\0' * (-len(body) % 4)
        table += name + struct.pack('>II', at + len(data), len(body))
        data += body
    size = at + len(data)
    head = struct.pack('>I4sI4s4s4s', size, b'\0\0\0\0', 0x04000000, b'mntr', b'RGB ', b'XYZ ')
    head += struct.pack('>6H', 2026, 1, 5, 0, 0, 0) + b'acsp' + b'\0' * 28 + b''.join(s15(v) for v in (.96420, 1, .82491))
    head += b'\0' * (128 - len(head))
    return head + struct.pack('>I', len(tags)) + table + data


def small(im, path, limit=150_000, **more):
    """Saves as JPEG under a size."""
    os.makedirs(os.path.dirname(path), exist_ok=True)
    quality = 86
    while True:
        im.save(path, quality=quality, optimize=True, progressive=True, **more)
        if os.path.getsize(path) <= limit or quality < 45:
            break
        quality -= 3
    print(os.path.basename(path), os.path.getsize(path) // 1024, 'KB', 'quality', quality)


def turned(tag):
    """Stored on its side: tag 6 says turn clockwise to see it, tag 8 the other way."""
    def save(im, path):
        exif = Image.Exif()
        exif[0x0112] = tag
        small(im.transpose(Image.Transpose.ROTATE_90 if tag == 6 else Image.Transpose.ROTATE_270), path, exif=exif)
    return save


def wide(im, path):
    """The same colours written in Display P3, with its profile."""
    a = np.asarray(im, float) / 255
    a = np.where(a <= .04045, a / 12.92, ((a + .055) / 1.055) ** 2.4) @ SRGB_TO_P3.T
    a = np.where(a <= .0031308, a * 12.92, 1.055 * np.clip(a, 0, 1) ** (1 / 2.4) - .055)
    small(Image.fromarray(np.clip(np.round(a * 255), 0, 255).astype('u1')), path, icc_profile=display_p3())


def tattling(im, path):
    """Carries an invented owner, camera and place; none of it may reach a published page."""
    exif = Image.Exif()
    exif[0x010F], exif[0x0110], exif[0x0131] = 'Veldrin', 'Veldrin Pocket 3', 'Veldrin camera 1.4'
    exif[0x013B], exif[0x8298], exif[0x0132] = 'Osmunda Tarrowby', 'Osmunda Tarrowby', '2026:11:03 16:20:41'
    exif[0x8769] = {0x9003: '2026:11:03 16:20:41', 0xA431: 'VP3-000417', 0x9286: b'ASCII\0\0\0key is under the third pot'}
    exif[0x8825] = {1: 'S', 2: (48.0, 52.0, 36.0), 3: 'W', 4: (123.0, 23.0, 36.0)}   # open ocean
    small(im, path, exif=exif)
    kept = Image.open(path).getexif()
    if not kept.get_ifd(0x8825) or not kept.get_ifd(0x8769):
        raise SystemExit(f'{path}: the place or the camera was not written')


def plate(im, path):
    """A small TIFF, as a scanner leaves it."""
    path = path[:-4] + '.tif'
    os.makedirs(os.path.dirname(path), exist_ok=True)
    im.resize((480, 360), Image.LANCZOS).save(path, compression='tiff_adobe_deflate')
    print(os.path.basename(path), os.path.getsize(path) // 1024, 'KB')


SPECIAL = {'tap-bridge': turned(6), 'toilet': turned(8), 'fridge-enamel': wide, 'lantern': wide, 'sink-apron': tattling, 'towel-bar': plate}
