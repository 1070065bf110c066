"""Stone and cast stuff: schist, quartz, terrazzo, and marbled linoleum."""
import numpy as np
from surface import H, W, X, Y, blur, diffuse, mix, noise, ramp, save, slopes, step, warp


def schist():
    """A honed grey-green stone: foliation that wanders, bright mica, a few quartz seams."""
    bend = noise(2.6, 1.4, .9, 201) - .5
    fold = noise(2.2, 2, 2, 202) - .5
    fol = warp(noise(.95, 6.5, 1.1, 203), 170 * bend, 300 * bend + 50 * fold)
    fine = warp(noise(.55, 9, 1.4, 204), 170 * bend, 300 * bend + 40 * fold)
    bands = warp(noise(1.45, 4, .8, 205), 170 * bend, 300 * bend + 40 * fold)
    t = np.clip(.12 + .34 * fol + .20 * fine + .42 * (bands - .2), 0, 1)
    c = ramp([(0, (62, 74, 68)), (.45, (100, 113, 102)), (.8, (134, 146, 131)), (1, (170, 178, 160))], t)
    rust = step(.66, .95, noise(1.6, 2.4, 1, 206)) * .28
    c = mix(c, (140, 118, 84), rust)
    seam = warp(noise(2.0, 2.0, .6, 207), 150 * bend, 270 * bend + 26 * fold)
    width = .0032 + .008 * step(.5, .9, noise(1.6, 2, 2, 208))
    vein = np.exp(-((seam - .56) / width) ** 2) * step(.35, .6, noise(1.5, 1, 2, 209)) * .8
    hair = np.exp(-((seam - .37) / .0024) ** 2) * step(.4, .65, noise(1.5, 1, 2, 210)) * .5
    c = mix(c, (212, 212, 194), np.clip(vein + hair, 0, 1) * (.7 + .3 * fine))
    mica = step(.90, .97, noise(.12, 2.2, 1, 211)) * step(.35, .75, fol)
    dark = step(.91, .97, noise(.3, 2.6, 1, 212)) * step(.4, .7, 1 - fol)
    c = c * (1 - .35 * dark[..., None]) + (mica * 38)[..., None]
    gx, gy = slopes(fol * 3 + fine * 1.5)
    save(c * diffuse(gx, gy, .8)[..., None] + ((noise(2.2, seed=213) - .5) * 8)[..., None],
         'kitchen/photos/counter-schist.jpg', (60, 45), limit=200_000)


def quartz():
    """A cast quartz counter: warm white, soft flecks, wide veins that go under and come back."""
    c = mix((232, 228, 219), (241, 238, 231), noise(1.6, seed=221))
    fleck = noise(.45, seed=222)
    c = c - (step(.62, .9, fleck) * 11)[..., None] + (step(.7, .95, noise(.4, seed=223)) * 6)[..., None]
    c = mix(c, (168, 158, 142), step(.955, .985, noise(.3, seed=224)) * .45)
    for k, (level, wide, dark) in enumerate(((.5, .028, .30), (.5, .004, .42), (.61, .003, .3), (.40, .012, .16))):
        w = warp(noise(2.3, .9, 1.5, 226), 70 * (noise(1.7, seed=230 + k) - .5), 70 * (noise(1.7, seed=240 + k) - .5))
        v = np.exp(-np.abs((w - level) / wide) ** 1.5) * step(.3, .62, noise(1.6, seed=250 + k)) * dark
        c = mix(c, (150, 142, 128), v)
    save(c, 'kitchen/photos/counter-quartz.jpg', (60, 45), grain=1.0)


def chip(out, cx, cy, size, colour, r):
    """Lays one broken chip of marble at a place, wrapping."""
    k = int(r.integers(5, 9))
    th = np.sort(r.uniform(0, 2 * np.pi, k))
    rad = size * r.uniform(.55, 1, k)
    sx, sy, turn = r.uniform(.75, 1.25), r.uniform(.75, 1.25), r.uniform(0, 3.14)
    n = int(size * 1.9) + 3
    gy, gx = np.mgrid[-n:n + 1, -n:n + 1].astype(float)
    a, b = (gx * np.cos(turn) + gy * np.sin(turn)) * sx, (gy * np.cos(turn) - gx * np.sin(turn)) * sy
    sd = np.max([a * np.cos(th[i]) + b * np.sin(th[i]) - rad[i] for i in range(k)], axis=0)
    m = np.clip(.5 - sd / 1.4, 0, 1)
    rows, cols = (int(cy) + np.arange(-n, n + 1)) % H, (int(cx) + np.arange(-n, n + 1)) % W
    spot = np.ix_(rows, cols)
    vein = VEIN[np.ix_((rows * 2) % H, (cols * 2) % W)]
    body = np.array(colour, float)[None, None] * (.93 + .16 * vein)[..., None]
    rim = 1 - .10 * np.exp(-np.abs(sd) / 2)
    out[spot] = out[spot] * (1 - m[..., None]) + body * rim[..., None] * m[..., None]
    TAKEN[spot] = np.maximum(TAKEN[spot], m)


def terrazzo():
    global VEIN, TAKEN
    VEIN, TAKEN = noise(1.3, seed=261), np.zeros((H, W))
    r = np.random.default_rng(262)
    out = mix((216, 212, 202), (227, 223, 214), noise(1.0, seed=263)) - (step(.6, .95, noise(.3, seed=264)) * 10)[..., None]
    colours = [(238, 234, 224), (126, 146, 132), (64, 92, 86), (190, 168, 138), (92, 92, 90), (176, 118, 92)]
    odds = [.30, .22, .14, .17, .09, .08]
    for size, count, tries in ((50, 60, 14), (30, 190, 8), (16, 520, 4), (8, 1300, 2), (4, 2400, 1)):
        for _ in range(count):
            for _ in range(tries):
                cx, cy = r.uniform(0, W), r.uniform(0, H)
                n = int(size * .8)
                if TAKEN[np.ix_((int(cy) + np.arange(-n, n, 3)) % H, (int(cx) + np.arange(-n, n, 3)) % W)].max() < .5:
                    shade = np.array(colours[r.choice(6, p=odds)]) * r.uniform(.9, 1.1)
                    chip(out, cx, cy, size * r.uniform(.65, 1.2), np.clip(shade, 0, 246), r)
                    break
    sheen = (noise(2.2, seed=265) - .5) * 6
    save(out + sheen[..., None], 'bath/photos/floor-terrazzo.jpg', (24, 18))


def linoleum():
    """Calendered linoleum: streaks of several pigments dragged along the sheet and folded."""
    bend = noise(2.1, 3, 1.2, 271) - .5
    curl = noise(1.7, 4, 2, 272) - .5
    c = mix((150, 72, 46), (168, 88, 58), noise(1.1, 2, 5, 273))
    for k, (colour, level, much) in enumerate((((204, 130, 90), .56, .6), ((118, 54, 38), .56, .6), ((214, 160, 118), .66, .5),
                                               ((96, 48, 38), .68, .5), ((186, 110, 58), .58, .6), ((150, 104, 92), .62, .6))):
        s = warp(noise(.9, 6, 22, 280 + k), 110 * curl, 60 * bend)
        blot = step(.25, .75, noise(1.1, 4, 8, 290 + k))
        c = mix(c, colour, step(level, level + .10, s) * blot * much)
    gx, gy = slopes(noise(.8, seed=299) * 1.6)
    save(c * diffuse(gx, gy, .7)[..., None], 'laundry/photos/floor-rust.jpg', (32, 24))


VEIN = TAKEN = None
ALL = [schist, quartz, terrazzo, linoleum]
