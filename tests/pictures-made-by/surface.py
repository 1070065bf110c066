"""Noise that wraps, light on a relief, and saving: what every flat material is made with."""
import os
import numpy as np
from PIL import Image
from scipy.ndimage import gaussian_filter, map_coordinates

W, H = 1800, 1350            # worked at one and a half times, then brought down to 1200 x 900
Y, X = np.mgrid[0:H, 0:W].astype(float)
ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..', 'example-project')
COVERS = {}                  # file -> (width, height) in inches


def noise(beta, along=1.0, across=1.0, seed=0, low=0.0, h=H, w=W):
    """Noise from 0 to 1 that wraps; `beta` is how fast the small grains fade, `along`/`across` compress x and y."""
    spectrum = np.fft.rfft2(np.random.default_rng(seed).normal(size=(h, w)))
    fy = np.fft.fftfreq(h)[:, None] * h
    fx = np.fft.rfftfreq(w)[None] * w * (h / w)
    f = np.sqrt((fx * along) ** 2 + (fy * across) ** 2)
    f[0, 0] = 1
    gain = 1 / f ** beta
    gain[f < low] = 0
    gain[0, 0] = 0
    a = np.fft.irfft2(spectrum * gain, s=(h, w))
    p, q = np.percentile(a, [1, 99])
    return np.clip((a - p) / (q - p), 0, 1)


def warp(a, dx, dy):
    """`a` looked up at moved places, wrapping."""
    return map_coordinates(a, [Y + dy, X + dx], order=1, mode='grid-wrap')


def blur(a, s):
    return gaussian_filter(a, s, mode='wrap')


def step(lo, hi, v):
    t = np.clip((v - lo) / (hi - lo), 0, 1)
    return t * t * (3 - 2 * t)


def mix(a, b, t):
    """Between two colours (or pictures) by `t`."""
    a, b = (np.asarray(v, float) for v in (a, b))
    return a * (1 - t[..., None]) + b * t[..., None]


def ramp(stops, t):
    """A colour from a list of (place, colour)."""
    places = [s[0] for s in stops]
    return np.stack([np.interp(t, places, [s[1][i] for s in stops]) for i in range(3)], -1)


def slopes(height):
    return ((np.roll(height, -1, 1) - np.roll(height, 1, 1)) / 2,
            (np.roll(height, -1, 0) - np.roll(height, 1, 0)) / 2)


def diffuse(gx, gy, ambient=.6):
    """Raking light from the upper left on a relief with these slopes; 1 where it is flat."""
    light = np.array([-.52, -.62, .9])
    light /= np.linalg.norm(light)
    d = (-gx * light[0] - gy * light[1] + light[2]) / np.sqrt(gx ** 2 + gy ** 2 + 1)
    return ambient + (1 - ambient) * np.clip(d, 0, None) / light[2]


def window(gx, gy, soft=.09):
    """How much of a tall window, up and to the left, a glossy relief shows."""
    pane = lambda lo, hi, v: step(lo - soft, lo + soft, v) * (1 - step(hi - soft, hi + soft, v))
    bar = 1 - .75 * pane(.155, .185, gx)
    return pane(.05, .30, gx) * pane(.02, .36, gy) * bar


def save(picture, name, inches, quality=86, limit=185_000, grain=1.3, seed=9):
    """Brings a picture down to 1200 x 900 without breaking its wrap, adds a little grain, keeps it under `limit`."""
    pad = 18
    p = np.pad(np.clip(picture, 0, 255), ((pad, pad), (pad, pad), (0, 0)), mode='wrap')
    im = Image.fromarray(p.astype('u1')).resize((1224, 924), Image.LANCZOS).crop((12, 12, 1212, 912))
    a = np.asarray(im, float)
    speck = gaussian_filter(np.random.default_rng(seed).normal(size=a.shape[:2]), .6, mode='wrap')
    im = Image.fromarray(np.clip(a + (speck * grain * 2.2)[..., None], 0, 255).astype('u1'))
    path = os.path.join(ROOT, 'rooms', name)
    os.makedirs(os.path.dirname(path), exist_ok=True)
    COVERS[name] = inches
    if path.endswith('.png'):
        im.quantize(72, dither=Image.Dither.NONE).save(path, optimize=True)
    elif path.endswith('.webp'):
        im.save(path, quality=56, method=6)
    else:
        while True:
            im.save(path, quality=quality, optimize=True, progressive=True)
            if os.path.getsize(path) <= limit or quality < 40:
                break
            quality -= 4
    print(name, im.size, os.path.getsize(path) // 1024, 'KB')
