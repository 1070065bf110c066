"""Wood: boards cut out of rings, with pores and flecks; staves, planks, veneers and plywood."""
import numpy as np
from surface import H, W, X, Y, blur, diffuse, mix, noise, ramp, save, slopes, step, warp

ASH = [(0, (228, 206, 170)), (.55, (212, 184, 142)), (1, (172, 138, 96))]
OAK = [(0, (206, 168, 116)), (.55, (184, 140, 90)), (1, (130, 92, 54))]


def board(h, seed, rings=26, pith=None, away=.5, wander=.5, pores=.5, fleck=0.0, stops=OAK):
    """One board, W long and `h` high with the grain along x; wraps along x only.

    `pith` is where the heart of the log lies across the board (0 to 1; outside it for quartered wood) and
    `away` how far below the face, both in board heights.
    """
    r = np.random.default_rng(seed)
    pith = r.uniform(.15, .85) if pith is None else pith
    y = np.linspace(0, 1, h)[:, None] + np.zeros((1, W))
    big = noise(2.6, 3.2, .25, seed + 1, h=h)
    small = noise(1.6, 14, 1, seed + 2, h=h)
    depth = away + wander * (noise(2.6, 1.0, .05, seed + 3, h=h) - .5)
    radius = np.sqrt((y - pith + .22 * wander * (big - .5)) ** 2 + depth ** 2) + .012 * (small - .5)
    phase = radius * rings + .55 * np.sin(radius * rings * .37 + seed)
    saw = phase % 1.0
    late = np.where(saw < .74, (saw / .74) ** 2.2, 1 - (saw - .74) / .26)
    width = 1 / np.clip(np.abs(np.gradient(radius, axis=0)) * h * rings, 1e-3, None)
    early = np.exp(-((saw - .06) / .10) ** 2)
    fibre = noise(.55, 80, 1.2, seed + 4, h=h)
    streak = noise(1.2, 60, 1.2, seed + 5, h=h)
    t = np.clip(.02 + .56 * late + .30 * (fibre - .3) + .36 * (streak - .4) + .22 * (big - .5), 0, 1)
    c = ramp(stops, t)
    dash = noise(.18, 30, 1.0, seed + 6, h=h)
    pore = step(.74, .90, dash + .16 * early - .10 * (1 - early)) * (.25 + .75 * early) * pores
    c = c * (1 - .42 * pore[..., None] * np.array([.8, 1, 1.2]))
    if fleck:
        ray = noise(.8, 9, 3.2, seed + 7, h=h) * step(.3, .8, noise(1.4, 3, 3, seed + 8, h=h))
        c = c + (step(.55, .72, ray) * fleck * 24)[..., None] * np.array([1, .95, .8])
    del width
    return c, pore


def gap(h, c, top=2, dark=.42):
    """Darkens the long edges of a board."""
    y = np.arange(h)[:, None, None]
    d = np.minimum(y, h - 1 - y)
    return c * (1 - (1 - dark) * np.clip(1 - d / top, 0, 1)) * (1 + .05 * np.exp(-((y - top - 2) / 2.5) ** 2))


def rows(count, make, seed, joint=1, swing=.07, width=2, dark=.45):
    """Stacks boards to fill the picture, each cut `joint` times along its length."""
    r = np.random.default_rng(seed)
    cuts = np.linspace(0, H, count + 1).astype(int)
    out = np.zeros((H, W, 3))
    for i in range(count):
        h = cuts[i + 1] - cuts[i]
        at = np.sort(r.integers(0, W, joint)) if joint else []
        parts = max(joint, 1)
        piece = np.searchsorted(at, np.arange(W), side='right') % parts if joint else np.zeros(W, int)
        row = np.zeros((h, W, 3))
        for k in range(parts):
            b, _ = make(h, int(r.integers(1, 90000)), r)
            b = np.roll(b, int(r.integers(0, W)), 1) * (1 + swing * r.normal()) * (1 + .012 * r.normal() * np.array([1, 0, -1]))
            m = piece == k
            row[:, m] = b[:, m]
        row = gap(h, row, width, dark)
        for a in at:
            for k in range(-2, 3):
                row[:, (a + k) % W] *= (.5, .75, 1)[abs(k)] if width > 1.5 else (.8, .93, 1)[abs(k)]
        out[cuts[i]:cuts[i + 1]] = row
    return out


def finish(c, seed, sheen=6, rough=1.2):
    """A waxed or matt oil surface over the wood."""
    height = noise(.5, 60, 1.2, seed) * rough + noise(1.6, seed=seed + 1) * 4
    gx, gy = slopes(height)
    return c * diffuse(gx, gy, .72)[..., None] + ((noise(2.2, seed=seed + 2) - .5) * sheen)[..., None]


def upright(c):
    """Turns grain that runs along x to run up the picture, keeping 4:3 (done on a square-pixel resample)."""
    from PIL import Image
    a = np.rot90(np.clip(c, 0, 255).astype('u1'))
    return np.asarray(Image.fromarray(np.ascontiguousarray(a)).resize((W, H), Image.LANCZOS), float)


def ash_veneer():
    """Leaves of one flitch laid side by side, grain up the door."""
    leaf = W // 4
    h = H // 3
    out = np.zeros((H, W, 3))
    cuts = np.linspace(0, H, 4).astype(int)
    base, _ = board(cuts[1], 115, rings=19, pith=.52, away=.16, wander=.6, pores=.7, stops=ASH)
    for k in range(3):
        b = np.roll(base, 26 * k, 1) * (1 + .012 * (k - 1))
        out[cuts[k]:cuts[k + 1]] = gap(cuts[k + 1] - cuts[k], b[:cuts[k + 1] - cuts[k]], 1.0, .9)
    del leaf, h
    save(upright(finish(out, 112, 5, .8)), 'kitchen/photos/cabinets-ash.jpg', (32, 24))


def oak_counter():
    make = lambda h, s, r: board(h, s, rings=r.uniform(5, 9), pith=r.uniform(-1.5, 2.5), away=r.uniform(.1, 2), wander=.35, pores=.75,
                                 fleck=r.choice([0, 0, .6]), stops=OAK)
    save(finish(rows(16, make, 121, 2, .075, 1.2, .74), 122, 9), 'kitchen/photos/counter-oak.jpg', (36, 27))


def oak_tread():
    stops = [(0, (198, 156, 102)), (.55, (172, 126, 76)), (1, (118, 80, 44))]
    make = lambda h, s, r: board(h, s, rings=r.uniform(9, 15), pith=r.uniform(-.3, 1.3), away=r.uniform(.1, .7), wander=.6, pores=.75,
                                 fleck=.3, stops=stops)
    save(finish(rows(4, make, 131, 0, .05, 1.1, .78), 132, 8), 'hall/photos/tread-oak.jpg', (24, 18))


def birch():
    """Peeled birch: broad watered figure with hardly a pore."""
    a = noise(2.4, 3, .8, 141)
    b = noise(1.5, 12, 1, 142)
    phase = (3.2 * a + .35 * b + Y / H) % 1.0
    band = np.where(phase < .8, (phase / .8) ** 3, 1 - (phase - .8) / .2)
    fibre = noise(.5, 50, 1.1, 143)
    shimmer = noise(1.3, 2, 9, 144)
    t = np.clip(.15 + .34 * band + .3 * (fibre - .4) + .25 * (shimmer - .5) + .25 * (noise(2.2, seed=145) - .5), 0, 1)
    c = ramp([(0, (236, 216, 182)), (.5, (222, 196, 156)), (1, (190, 154, 110))], t)
    pin = step(.965, .985, noise(.3, 6, 1, 146)) * step(.5, .8, noise(1.2, seed=147))
    c = c * (1 - .22 * pin[..., None])
    save(finish(c, 148, 5, .6), 'laundry/photos/counter-birch.jpg', (48, 36))


ALL = [ash_veneer, oak_counter, oak_tread, birch]
