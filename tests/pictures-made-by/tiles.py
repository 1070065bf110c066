"""Tile: glazed squares, brick bond, flutes, pennies, clay hexagons, and pressed patterns."""
import numpy as np
from surface import H, W, X, Y, blur, diffuse, mix, noise, ramp, save, slopes, step, warp, window


def rectangles(cols, rows, bond=0.0, wobble=0.0, seed=1):
    """For each point: distance to the nearest edge in px, number of its tile, and place from the tile's middle."""
    tw, th = W / cols, H / rows
    wy = (Y + wobble * (noise(1.3, seed=seed) - .5)) % H
    row = np.floor(wy / th).astype(int) % rows
    wx = (X + wobble * (noise(1.3, seed=seed + 1) - .5) + (row % 2) * bond * tw) % W
    col = np.floor(wx / tw).astype(int) % cols
    u, v = wx - col * tw, wy - row * th
    return np.minimum.reduce([u, tw - u, v, th - v]), row * cols + col, u - tw / 2, v - th / 2


def lattice(cols, rows, wobble=0.0, seed=1):
    """The nearest centre of a close-packed lattice: number, and place from it in px, in pitches of one column."""
    pw, ph = W / cols, H / rows
    wx = X + wobble * (noise(1.3, seed=seed) - .5)
    wy = Y + wobble * (noise(1.3, seed=seed + 1) - .5)
    best = np.full((H, W), 1e9)
    ident = np.zeros((H, W), int)
    du, dv = np.zeros((H, W)), np.zeros((H, W))
    base = np.floor(wy / ph).astype(int)
    for k in (-1, 0, 1):
        r = base + k
        shift = (r % 2) * .5
        c = np.round(wx / pw - shift - .5).astype(int)
        u = wx - (c + .5 + shift) * pw
        v = (wy - (r + .5) * ph) * (pw * .8660254 / ph)
        d = u * u + v * v
        nearer = d < best
        best = np.where(nearer, d, best)
        ident = np.where(nearer, (r % rows) * cols + c % cols, ident)
        du, dv = np.where(nearer, u, du), np.where(nearer, v, dv)
    return ident, du, dv, pw


def glaze(d, ident, u, v, count, spec):
    """Shades glazed tiles: tilt, pooling, chips and the window seen in each."""
    r = np.random.default_rng(spec['seed'])
    tone, hue, tx, ty = (r.normal(size=count)[ident] for _ in range(4))
    s = spec['seed'] + 30
    chips = step(.60, .78, noise(1.0, seed=s) * np.exp(-np.clip(d, 0, None) / spec['chip']) * 1.25) if spec['chip'] else 0 * d
    body = np.clip((d - spec['joint'] / 2) / 1.6, 0, 1)
    edge = np.exp(-np.clip(d - spec['joint'] / 2, 0, None) / spec['pillow'])
    swell = noise(3.4, seed=s + 1, low=4) * spec['swell'] + noise(3.4, seed=s + 2, low=19) * spec['ripple']
    height = -edge * spec['pillow'] * .8 + swell - chips * 3 + spec.get('relief', 0)
    gx, gy = slopes(height)
    gx = gx + tx * spec['tilt'] + u * spec.get('dish', 0)
    gy = gy + ty * spec['tilt'] + v * spec.get('dish', 0)
    t = np.clip(.42 + spec['vary'] * .2 * tone + .5 * (noise(1.5, seed=s + 3) - .5) + .35 * edge
                + spec.get('pool', 0), 0, 1)
    colour = ramp(spec['colours'], t) * (1 + spec.get('hue', .012) * hue[..., None] * np.array([1, .2, -1]))
    pits = step(.86, .93, noise(.35, seed=s + 4)) * step(.45, .75, noise(1.2, seed=s + 5)) * spec.get('pits', 0)
    colour = colour * (1 - .35 * pits[..., None])
    colour = mix(colour, spec['clay'] * (.85 + .3 * noise(.5, seed=s + 6)[..., None]), np.clip(chips, 0, 1) * .75)
    colour = colour * diffuse(gx, gy, spec.get('ambient', .66))[..., None]
    colour = colour + (window(gx, gy, .12) * (1 - chips) * spec['gloss'] * (.6 + .6 * noise(1.4, seed=s + 7)))[..., None]
    grout = np.array(spec['grout']) * (.9 + .2 * noise(.5, seed=s + 8))[..., None]
    shade = 1 - .28 * np.exp(-np.abs(d - spec['joint'] / 2) / 3)
    return mix(grout * shade[..., None], colour, body)


def cream():
    d, i, u, v = rectangles(8, 6, 0, 9, 11)
    spec = dict(seed=12, joint=4, pillow=3.5, chip=11, swell=34, ripple=5, tilt=.075, vary=1.0, pits=1, gloss=46,
                colours=[(0, (240, 232, 212)), (.5, (229, 218, 193)), (1, (203, 186, 154))],
                clay=np.array([188., 150, 118]), grout=(214, 205, 187))
    save(glaze(d, i, u, v, 48, spec), 'kitchen/photos/tile-cream.jpg', (32, 24))


def sage():
    d, i, u, v = rectangles(4, 8, .5, 6, 21)
    spec = dict(seed=22, joint=6, pillow=7, chip=0, swell=26, ripple=3, tilt=.05, vary=.8, pits=.4, gloss=44,
                colours=[(0, (176, 188, 160)), (.5, (150, 165, 136)), (1, (112, 130, 103))],
                clay=np.array([190., 160, 130]), grout=(206, 203, 190))
    save(glaze(d, i, u, v, 32, spec), 'kitchen/photos/tile-sage.jpg', (24, 18))


def river():
    d, i, u, v = rectangles(8, 3, 0, 3, 31)
    pitch = W / 24
    across = ((X + 2.0 * (noise(1.6, seed=33) - .5)) % pitch) / pitch - .5
    flute = np.sqrt(np.clip(1 - (across * 1.9) ** 2, .02, 1))
    spec = dict(seed=32, joint=5, pillow=4, chip=0, swell=22, ripple=2, tilt=.03, vary=1.0, pits=.4, gloss=70,
                relief=flute * 20, pool=.75 * (.72 - flute), ambient=.5,
                colours=[(0, (136, 172, 150)), (.45, (72, 122, 104)), (1, (28, 70, 64))],
                clay=np.array([160., 150, 130]), grout=(170, 178, 168))
    save(glaze(d, i, u, v, 24, spec), 'bath/photos/tile-river.jpg', (24, 18))


def penny():
    i, u, v, p = lattice(14, 12, 3, 41)
    d = p * .44 - np.hypot(u, v)
    spec = dict(seed=42, joint=0, pillow=7, chip=0, swell=8, ripple=1, tilt=.03, vary=1.25, pits=.3, gloss=55, dish=.0022,
                colours=[(0, (150, 184, 162)), (.5, (88, 136, 118)), (1, (44, 92, 84))],
                clay=np.array([160., 150, 130]), grout=(212, 212, 202))
    save(glaze(d, i, u, v, 168, spec), 'bath/photos/tile-penny.jpg', (12.25, 9.1875))


def terracotta():
    i, u, v, p = lattice(7, 6, 8, 51)
    d = p / 2 - np.maximum(np.abs(u), np.abs(u) * .5 + np.abs(v) * .8660254)
    r = np.random.default_rng(52)
    tone, hue = r.normal(size=42)[i], r.normal(size=42)[i]
    joint, edge = 11, np.exp(-np.clip(d - 5, 0, None) / 7)
    height = -edge * 6 + noise(3.0, seed=53, low=3) * 26 + noise(2.2, seed=54, low=14) * 4.5 + noise(1, seed=50, low=60) * .8
    gx, gy = slopes(height)
    gx, gy = gx + r.normal(size=42)[i] * .03, gy + r.normal(size=42)[i] * .03
    t = np.clip(.5 + .17 * tone + .9 * (noise(1.5, seed=55) - .5) + .25 * (noise(.7, seed=56) - .5) + .18 * edge, 0, 1)
    c = ramp([(0, (208, 150, 116)), (.5, (178, 112, 82)), (1, (132, 78, 58))], t)
    c = c * (1 + .035 * hue[..., None] * np.array([.6, .1, -1]))
    smoke = step(.62, .95, warp(noise(1.7, seed=57), 0, 0)) * .35
    c = mix(c, (232, 190, 150), smoke)
    c = c * (1 - .4 * (step(.9, .96, noise(.5, seed=58)) * step(.4, .7, noise(1.2, seed=59)))[..., None])
    c = c * diffuse(gx, gy, .62)[..., None] + (window(gx, gy, .2) * 9)[..., None]
    grout = np.array([176., 160, 140]) * (.88 + .24 * noise(.5, seed=60))[..., None]
    grout = grout * (1 - .3 * np.exp(-np.abs(d - joint / 2) / 4))[..., None]
    save(mix(grout, c, np.clip((d - joint / 2) / 2.2, 0, 1)), 'kitchen/photos/floor-terracotta.jpg', (42, 31.5))


def encaustic():
    """An eight inch tile of our own drawing: a disc cut by four leaves, quarter rings that meet across corners."""
    d, i, u, v = rectangles(4, 3, 0, 2.5, 61)
    half = W / 8
    soft = 1.6
    rough = 2.6 * (noise(1.0, seed=62) - .5)
    a, b = np.abs(u) / half, np.abs(v) / half
    inside = lambda dist: np.clip(.5 - (dist * half + rough) / soft, 0, 1)
    r = np.hypot(a, b)
    corner = np.hypot(1 - a, 1 - b)
    diag_a, diag_b = (a + b) / np.sqrt(2), np.abs(a - b) / np.sqrt(2)
    leaf = np.hypot(diag_a - .36, diag_b + .42) - .53
    petal = np.hypot(np.maximum(a, b) - .47, np.minimum(a, b) + .55) - .66
    chalk, ink, clay, sage = (222, 212, 192), (52, 66, 84), (176, 104, 74), (142, 154, 132)
    c = np.zeros((H, W, 3)) + np.array(chalk, float)
    for colour, dist in ((sage, petal), (ink, np.abs(corner - .52) - .07), (clay, corner - .33), (chalk, corner - .15),
                         (ink, corner - .085), (ink, leaf), (chalk, r - .155), (clay, r - .105)):
        c = mix(c, colour, inside(dist))
    n = np.random.default_rng(63)
    c = c * (1 + .035 * n.normal(size=12)[i])[..., None]
    c = c * (.86 + .28 * noise(.9, seed=64))[..., None] ** .75
    c = mix(c, (206, 198, 182), .34 * step(.52, .95, noise(1.5, seed=65)) * (.5 + .5 * noise(.6, seed=66)))
    c = c * (1 - .3 * step(.9, .97, noise(.35, seed=67)))[..., None]
    height = -np.exp(-np.clip(d - 1.5, 0, None) / 3) * 2.2 + noise(1.2, seed=68) * 4
    gx, gy = slopes(height)
    c = c * diffuse(gx + n.normal(size=12)[i] * .015, gy, .68)[..., None]
    grout = np.array([168., 160, 146]) * (.9 + .2 * noise(.5, seed=69))[..., None]
    save(mix(grout, c, np.clip((d - 2) / 1.6, 0, 1)), 'hall/photos/floor-encaustic.jpg', (32, 24))


ALL = [cream, sage, river, penny, terracotta, encaustic]
