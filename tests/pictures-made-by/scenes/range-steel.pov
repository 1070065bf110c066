#declare S = 40;
#include "studio.inc"
#include "range.inc"
Sweep(<.46, .45, .43>)
Range(SteelH, Chrome, Iron, 0)
Shot(<0, 18.6, -12>, 138, -26, 13, 27)
