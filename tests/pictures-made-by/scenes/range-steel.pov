#declare S = 40;
#include "studio.inc"
#include "range.inc"
Sweep(<.58, .57, .545>)
Range(SteelH, Chrome, Iron, 0)
Shot(<0, 17.5, 0>, 104, -24, 11, 32)
