"""Renders the scenes with POV-Ray and develops them: photographs.py [name ...], all of them without a name."""
import os
import subprocess
import sys
from develop import develop

HERE = os.path.dirname(os.path.abspath(__file__))
SCENES, OUT = os.path.join(HERE, 'scenes'), os.path.join(HERE, 'out')
BOOK = os.path.join(HERE, '..', '..', 'example-project')
# scene: exposure; a scene's folder is its room
ROOMS = {
    'kitchen': '''range-steel range-enamel range-black hood-brass fridge-panel fridge-enamel dishwasher-panel microwave sink-apron
        sink-undermount tap-bridge tap-gooseneck pull-brass knob-brass pendant-opal pendant-ribbed shelf-oak disposer
        detail-range-wall kitchen-room''',
    'bath': '''vanity-oak basin tap-basin toilet tub shower-set shower-glass sconce mirror-cabinet towel-bar fan bath-room''',
    'laundry': 'washer dryer sink-enamel tap-wall light-globe laundry-room',
    'hall': 'lantern rail-hook hall-room',
    '': 'house',
}
EXPOSURE = {'pull-brass': 2.1, 'knob-brass': 2.1, 'dishwasher-panel': 1.9, 'fridge-panel': 1.7, 'shower-glass': 1.5, 'kitchen-room': 1.35,
            'detail-range-wall': 1.4, 'bath-room': 1.5, 'laundry-room': .95, 'hall-room': 1.15, 'house': 1.5}
LIMIT = {'house': 218_000, 'shower-set': 210_000, 'shower-glass': 205_000}


def place(room, scene):
    """Where a scene's picture goes in the example."""
    if not room:
        return os.path.join(BOOK, 'photos', scene + '.jpg')
    name = 'room' if scene == room + '-room' else scene
    return os.path.join(BOOK, 'rooms', room, 'photos', name + '.jpg')


def render(scene, size, threads=1):
    """One linear render; returns the pixmap's path."""
    os.makedirs(OUT, exist_ok=True)
    ppm = os.path.join(OUT, scene + '.ppm')
    command = ['nice', '-n', '19', 'povray', scene + '.pov', '+O' + ppm, '+FP16', 'File_Gamma=1.0', f'+W{size[0]}', f'+H{size[1]}',
               '+A0.12', '+AM2', '+R2', f'+WT{threads}', '-D', '-V']
    done = subprocess.run(command, cwd=SCENES, stdin=subprocess.DEVNULL, capture_output=True, text=True)
    if done.returncode:
        sys.exit(f'{scene}: ' + ' '.join(line for line in done.stderr.splitlines() if 'rror' in line or 'line' in line)[:600])
    return ppm


def main():
    from phone import SPECIAL
    wanted = sys.argv[1:]
    size = (int(os.environ.get('WIDE', '1600')),) * 2
    size = (size[0], size[0] * 3 // 4)
    for room, scenes in ROOMS.items():
        for scene in scenes.split():
            if wanted and scene not in wanted:
                continue
            ppm = render(scene, size)
            whole = scene.endswith('-room') or scene == 'house' or scene.startswith('detail')
            develop(ppm, place(room, scene), EXPOSURE.get(scene, 1.55), limit=LIMIT.get(scene, 215_000 if whole else 150_000),
                    seed=sum(map(ord, scene)), save=SPECIAL.get(scene))


if __name__ == '__main__':
    main()
