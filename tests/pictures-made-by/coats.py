"""Coats and cloth: brushed and rolled paint, limewash, boards, and a flat-woven runner."""
import numpy as np
from surface import H, W, X, Y, blur, diffuse, mix, noise, save, slopes, step, warp, window


def brushed(colour, seed, along_x=True, depth=1.5, sheen=8, broad=2.0):
    """Satin paint laid off with a brush in one direction."""
    ax = (34, 1.1) if along_x else (1.1, 34)
    hair = noise(.75, *ax, seed)
    drag = noise(1.3, ax[0] / 6 + .8, ax[1] / 6 + .8, seed + 1)
    height = hair * depth + drag * depth * 1.6 + noise(1.9, seed=seed + 2) * 5
    gx, gy = slopes(height)
    c = np.array(colour, float) * (.97 + .05 * noise(1.8, seed=seed + 3))[..., None]
    lit = c * diffuse(gx, gy, .62)[..., None]
    return lit + (window(gx * 2.4, gy * 2.4, .2) * sheen + (noise(2.4, seed=seed + 4) - .5) * broad)[..., None]


def ink():
    save(brushed((38, 50, 68), 301, False, 1.1, 7, 5), 'kitchen/photos/cabinets-ink.jpg', (32, 24))


def door():
    c = brushed((196, 142, 44), 311, False, 1.5, 26, 8)
    save(c, 'hall/photos/paint-door.jpg', (24, 18))


def chalk():
    """Dead-flat paint, rolled."""
    nap = noise(.85, seed=321, low=30)
    gx, gy = slopes(nap * 2.2 + noise(1.7, seed=322) * 6)
    c = mix((231, 226, 214), (238, 234, 223), noise(1.9, seed=323))
    save(c * diffuse(gx, gy, .72)[..., None], 'kitchen/photos/wall-chalk.jpg', (32, 24))


def limewash():
    """Lime brushed on crosswise in short arcs, thin enough for the coat under it to show."""
    swirl, roll = noise(1.9, seed=331) - .5, noise(1.9, seed=332) - .5
    strokes = [warp(noise(1.05, a, b, 333 + k), 130 * swirl, 130 * roll) for k, (a, b) in enumerate(((1, 4.5), (4.5, 1), (2, 2)))]
    turn = step(.35, .65, noise(1.6, 3, 3, 336))
    s = strokes[0] * turn + strokes[1] * (1 - turn)
    t = np.clip(.55 * s + .3 * strokes[2] + .35 * (noise(1.8, seed=337) - .25), 0, 1)
    c = mix((196, 182, 160), (236, 226, 208), t)
    hair = warp(noise(.5, 1, 16, 338), 130 * swirl, 130 * roll) * turn + warp(noise(.5, 16, 1, 339), 130 * swirl, 130 * roll) * (1 - turn)
    gx, gy = slopes(s * 4 + hair * 1.6)
    save(c * (.97 + .06 * hair)[..., None] * diffuse(gx, gy, .74)[..., None], 'hall/photos/wall-limewash.jpg', (90, 67.5))


def boards_white():
    """Tongue and groove under white satin: six boards of four inches, each with its own reflection."""
    n = H / 6
    row = np.floor(Y / n).astype(int)
    v = Y - row * n
    d = np.minimum(v, n - v)
    r = np.random.default_rng(341)
    c = brushed((226, 224, 216), 342, True, 1.5, 7, 3)
    tilt = r.normal(size=6)[row] * .02
    groove = np.exp(-(np.clip(d - 1, 0, None) / 5.5) ** 2)
    grain = noise(1.0, 26, 1.6, 346) * 3
    gx, gy = slopes(-groove * 9 + grain)
    c = c * diffuse(gx, gy + tilt, .60)[..., None]
    c = c * (1 - .62 * np.exp(-(d / 3.0) ** 2))[..., None]
    save(c, 'bath/photos/wall-board.jpg', (32, 24), grain=1.0)


def bead_white():
    """A painted laundry door in two inch beadboard, grooves upright."""
    n = W / 16
    u = X % n
    d = np.minimum(u, n - u)
    bead = np.where(u < 22, np.sqrt(np.clip(1 - ((u - 11) / 11) ** 2, 0, 1)) * 7, 9)
    bead = blur(np.where(d < 2.5, 0, bead), 1.2)
    gx, gy = slopes(bead + noise(1.2, 1.2, 60, 352) * 1.5)
    c = np.array([236., 234, 228]) * (.985 + .02 * noise(2.2, seed=353))[..., None]
    c = c * diffuse(gx, gy, .62)[..., None] * (1 - .5 * np.exp(-(d / 3.2) ** 2))[..., None]
    c = c + (window(gx, gy, .12) * 10)[..., None]
    save(c, 'laundry/photos/cabinet-white.png', (32, 24), grain=0)


def runner():
    """Weft-faced wool: small ribs, stripes along the run, flecked yarn."""
    px, py = 15, 9
    wobx, woby = 5 * (noise(1.4, seed=361) - .5), 4 * (noise(1.4, seed=362) - .5)
    x, y = X + wobx, Y + woby
    col = np.floor(x / px).astype(int)
    ys = y + (col % 2) * py / 2
    row = np.floor(ys / py).astype(int)
    fx, fy = (x / px) % 1 - .5, (ys / py) % 1 - .5
    r = np.random.default_rng(363)
    yarn = r.normal(size=(int(H / py) + 4, int(W / px) + 4))[row % int(H / py), col % int(W / px)]
    bump = np.sqrt(np.clip(1 - (fy * 1.9) ** 2, 0, 1)) * np.sqrt(np.clip(1 - (fx * 1.75) ** 2, 0, 1))
    twist = np.sin((fy * 2.4 + fx * 3.2) * 6.283 + yarn) * .5 + .5
    inches = (x / W * 16) % 16
    c = np.zeros((H, W, 3)) + np.array([214., 204, 184])
    for a, b, colour in ((1.0, 2.6, (44, 58, 78)), (3.0, 3.3, (44, 58, 78)), (5.2, 6.4, (168, 92, 62)), (7.2, 7.5, (196, 146, 66)),
                         (8.9, 9.2, (196, 146, 66)), (9.9, 11.1, (168, 92, 62)), (13.0, 13.3, (44, 58, 78)), (13.7, 15.3, (44, 58, 78))):
        c = mix(c, colour, ((inches > a) & (inches < b)).astype(float))
    c = c * (1 + .06 * yarn[..., None]) * (.86 + .26 * noise(.4, seed=364))[..., None]
    gx, gy = slopes(blur(bump, .7) * 7 + twist * .9)
    c = c * diffuse(gx, gy, .55)[..., None] * (.42 + .62 * blur(bump, .8) ** .6)[..., None]
    fuzz = step(.8, .95, noise(.35, 3, 9, 365)) * 14
    save(c * 1.08 + fuzz[..., None], 'hall/photos/runner-wool.webp', (16, 12))


ALL = [ink, door, chalk, limewash, boards_white, bead_white, runner]
