"""Makes every flat material and writes covers.txt, the size of the real surface that each picture shows."""
import os
import sys
import coats, stone, surface, tiles, wood



def main():
    wanted = sys.argv[1:]
    for module in (coats, stone, tiles, wood):
        for make in module.ALL:
            if not wanted or make.__name__ in wanted:
                make()
    if wanted:
        return
    path = os.path.join(os.path.dirname(os.path.abspath(__file__)), 'covers.txt')
    with open(path, 'w') as f:
        f.write('# file under example-project/rooms, width in inches, height in inches\n')
        for name, (w, h) in sorted(surface.COVERS.items()):
            f.write(f'{name} {w:g} {h:g}\n')


if __name__ == '__main__':
    main()
