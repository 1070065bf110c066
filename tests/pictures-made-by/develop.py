"""Develops a linear render as a film would: exposure, glow, tone curve, falloff, grain; then keeps it under a size."""
import os
import sys
import numpy as np
from PIL import Image
from scipy.ndimage import gaussian_filter


def linear(path):
    """A sixteen-bit portable pixmap as numbers from 0 to 1."""
    with open(path, 'rb') as f:
        data = f.read()
    head, at = [], 0
    while len(head) < 4:
        while data[at:at + 1].isspace():
            at += 1
        if data[at:at + 1] == b'#':
            at = data.index(b'\n', at)
            continue
        end = at
        while not data[end:end + 1].isspace():
            end += 1
        head.append(data[at:end])
        at = end
    w, h, top = (int(v) for v in head[1:])
    kind = '>u2' if top > 255 else 'u1'
    return np.frombuffer(data, kind, w * h * 3, at + 1).reshape(h, w, 3) / top


def enlarge(a, size):
    if (a.shape[1], a.shape[0]) == size:
        return a
    root = np.sqrt(a)
    planes = [np.asarray(Image.fromarray(root[..., k].astype('f4'), 'F').resize(size, Image.LANCZOS)) for k in range(3)]
    return np.clip(np.stack(planes, -1), 0, None) ** 2


def curve(x):
    """A filmic shoulder and toe, most of it on brightness so that colours keep their hue."""
    f = lambda v: v * (2.35 * v + .06) / (v * (2.2 * v + .60) + .15)
    y = x @ np.array([.25, .62, .13])
    by_light = x * (f(y) / np.maximum(y, 1e-5))[..., None]
    return np.clip(.45 * by_light + .55 * f(x), 0, 1)


def develop(ppm, jpg, exposure=2.0, size=(1600, 1200), limit=170_000, seed=1, warm=0.0, grain=1.0, save=None):
    a = enlarge(linear(ppm), size) * exposure * np.array([1 + warm, 1, 1 - warm])
    bright = np.clip(a - .85, 0, 2.5)
    for sigma, k in ((4, .05), (16, .05), (60, .035)):
        a = a + k * np.stack([gaussian_filter(bright[..., c], sigma) for c in range(3)], -1)
    h, w = a.shape[:2]
    y, x = np.mgrid[0:h, 0:w]
    r2 = ((x - w / 2) ** 2 + (y - h / 2) ** 2) / ((w / 2) ** 2 + (h / 2) ** 2)
    a = a * (1 - .20 * r2 ** 1.3)[..., None]
    a = curve(a)
    grey = a @ np.array([.25, .62, .13])
    a = grey[..., None] + (a - grey[..., None]) * .9
    srgb = np.where(a <= .0031308, a * 12.92, 1.055 * a ** (1 / 2.4) - .055) * 255
    r = np.random.default_rng(seed)
    speck = gaussian_filter(r.normal(size=(h, w)), .75) * 3.2 * grain
    tint = gaussian_filter(r.normal(size=(h, w, 3)), (1, 1, 0)) * 1.6 * grain
    mid = 1 - .55 * np.abs(srgb.mean(-1) / 255 - .42) / .58
    srgb = srgb + ((speck + 0)[..., None] + tint) * mid[..., None]
    im = Image.fromarray(np.clip(srgb, 0, 255).astype('u1'))
    if save:
        return save(im, jpg)
    os.makedirs(os.path.dirname(jpg), exist_ok=True)
    quality = 86
    while True:
        im.save(jpg, quality=quality, optimize=True, progressive=True)
        if os.path.getsize(jpg) <= limit or quality < 45:
            break
        quality -= 3
    print(os.path.basename(jpg), os.path.getsize(jpg) // 1024, 'KB', 'quality', quality)


if __name__ == '__main__':
    develop(sys.argv[1], sys.argv[2], *[float(v) for v in sys.argv[3:4]])
