#include "room.inc"
// the house from across the lane: fourteen feet wide, three storeys of brick between its neighbours; x 0 to 168
#macro BrickT(C1, C2, C3) texture { brick texture { pigment { rgb C3 } finish { Flat } }, texture { pigment { cells color_map { [0 rgb C1] [.5 rgb C2] [1 rgb C1 * .6] } scale <8, 2.667, 4> } finish { Flat } normal { bumps .25 scale .7 } } brick_size <8, 2.667, 4> mortar .38 } #end
#declare Red = BrickT(<.30, .115, .075>, <.36, .15, .095>, <.42, .38, .33>)
#declare Buff = BrickT(<.36, .27, .19>, <.40, .31, .22>, <.40, .37, .33>)
#declare Plum = BrickT(<.19, .10, .085>, <.23, .125, .10>, <.36, .33, .30>)
#declare Stone = texture { pigment { bozo color_map { [0 rgb <.56, .53, .47>] [1 rgb <.62, .59, .53>] } scale 9 } finish { Flat } normal { bumps .3 scale 1.2 } };
#declare Pane = texture { pigment { rgb <.035, .04, .045> } finish { ambient 0 diffuse .5 specular .3 roughness .004 reflection { .16, .6 } } normal { bumps .02 scale 30 } };
#macro Hole(x0, x1, y0, y1) box { <x0, y0, -10> <x1, y1, 22> } #end
#macro Win(x0, x1, y0, y1)
  box { <x0, y0, 5> <x1, y1, 5.4> texture { Pane } }
  SashZ(4, y0, y1, x0, x1, 2, 2)
  union { RB(<x0 - 5, y0 - 5, -3>, <x1 + 5, y0, 4>, .4) prism { linear_sweep -.8, 3, 4, <x0 - 3, y1>, <x0 - 7, y1 + 11>, <x1 + 7, y1 + 11>, <x1 + 3, y1> rotate x * -90 scale <1, 1, -1> translate z * 0 } texture { Stone } }
  
#end
#macro Shut(x0, x1, y0, y1) union { difference { RB(<x0, y0, -2.2>, <x1, y1, 0>, .2) box { <x0 + 2.4, y0 + 3, -3> <x1 - 2.4, y0 + (y1 - y0) * .48, -1.4> } box { <x0 + 2.4, y0 + (y1 - y0) * .53, -3> <x1 - 2.4, y1 - 3, -1.4> } }
  #local g = y0 + 4; #while (g < y1 - 3) box { <x0 + 2.2, -.4, -.5> <x1 - 2.2, .4, .5> rotate x * 35 translate <0, g, -1.4> } #local g = g + 2; #end texture { Ink } } #end
difference { box { <0, 0, 0> <168, 392, 30> texture { Red } } Hole(22, 62, 44, 116) Hole(104, 146, 22, 128) Hole(24, 64, 168, 242) Hole(104, 144, 168, 242) Hole(24, 64, 286, 350) Hole(104, 144, 286, 350) }
Win(22, 62, 44, 116) Win(24, 64, 168, 242) Win(104, 144, 168, 242) Win(24, 64, 286, 350) Win(104, 144, 286, 350)
Shut(3, 19.4, 44, 116) Shut(64.6, 81, 44, 116)
Shut(5, 21.4, 168, 242) Shut(66.6, 83, 168, 242) Shut(85.2, 101.4, 168, 242) Shut(146.6, 163, 168, 242)
// stone foot, band, cornice
union { box { <0, 0, -3> <168, 24, 0> } texture { Stone } }
union { box { <0, 146, -2> <168, 153, 0> } texture { Stone } }
union { RB(<-2, 384, -8>, <170, 392, 2>, .4) RB(<-4, 392, -14>, <172, 402, 2>, .6) #declare k = 0; #while (k < 15) RB(<3 + k * 11.4, 376, -9>, <8 + k * 11.4, 385, 0>, .3) #declare k = k + 1; #end box { <0, 366, -1.6> <168, 371, 0> } texture { Trim } }
// door, transom, surround
#declare Door = texture { pigment { rgb <.46, .26, .05> } finish { ambient 0 diffuse .78 specular .3 roughness .02 reflection { .01, .35 fresnel on } } };
union { RB(<98, 22, -4>, <105, 128, 3>, .3) RB(<145, 22, -4>, <152, 128, 3>, .3) RB(<95, 126, -6>, <155, 135, 3>, .4) RB(<92, 134, -10>, <158, 139, 3>, .4) box { <104, 104, 2> <146, 107, 6> } texture { Trim } }
box { <105, 107, 5> <145, 126, 5.4> texture { pigment { rgb <.5, .36, .18> } finish { emission .25 reflection .08 } } }
union { difference { box { <105, 22, 3> <145, 104, 6> } box { <110, 62, 0> <123, 98, 3.8> } box { <127, 62, 0> <140, 98, 3.8> } box { <110, 28, 0> <123, 56, 3.8> } box { <127, 28, 0> <140, 56, 3.8> } } RB(<111.5, 63.5, 3.1>, <121.5, 96.5, 5>, .3) RB(<128.5, 63.5, 3.1>, <138.5, 96.5, 5>, .3) RB(<111.5, 29.5, 3.1>, <121.5, 54.5, 5>, .3) RB(<128.5, 29.5, 3.1>, <138.5, 54.5, 5>, .3) texture { Door } }
union { sphere { <141.6, 60, 1.4> 1.6 } RB(<118, 57.6, 2.4>, <132, 60.4, 3.2>, .2) torus { 2.4, .4 rotate x * 90 translate <125, 84, 2> } texture { Brass } }
// steps and rail
#declare k = 0; #while (k < 3) object { RB(<92, 0, -44 + k * 13>, <158, 7.3 * (k + 1), 0>, .5) texture { Stone } } #declare k = k + 1; #end
#macro Rail(X) union { cylinder { <X, 7, -40> <X, 38, -40> .7 } cylinder { <X, 22, -6> <X, 54, -6> .7 } cylinder { <X, 38, -41> <X, 54, -6> .9 } sphere { <X, 38.6, -41> 1.3 } #local k = 1; #while (k < 7) cylinder { <X, 8 + k * 2.2, -40 + k * 4.9> <X, 38 + k * 2.25, -40 + k * 4.9> .35 } #local k = k + 1; #end texture { Iron } } #end
Rail(93.6) Rail(156.4)
// house lantern
union { RB(<159, 98, -7>, <164, 108, -2>, .3) cylinder { <161.5, 108, -4.5> <161.5, 111, -4.5> 1 } cylinder { <161.5, 104, 0> <161.5, 104, -4> .6 } texture { Iron } } box { <158.8, 99.5, -7.2> <164.2, 106.5, -2.2> pigment { rgb <1, .85, .6> } finish { emission .9 } }
// neighbours
difference { box { <-260, 0, 4> <-.6, 372, 30> texture { Buff } } Hole(-66, -26, 40, 116) Hole(-66, -26, 164, 236) Hole(-66, -26, 276, 338) Hole(-150, -110, 40, 116) Hole(-150, -110, 164, 236) Hole(-150, -110, 276, 338) box { <-70, 0, 0> <-66.1, 1, 1> } }
union { Win(-66, -26, 40, 116) Win(-66, -26, 164, 236) Win(-66, -26, 276, 338) Win(-150, -110, 40, 116) Win(-150, -110, 164, 236) Win(-150, -110, 276, 338) translate z * 4 }
union { RB(<-260, 366, -6>, <-2, 380, 6>, .5) texture { Stone } }
difference { box { <168.6, 0, 2> <430, 420, 30> texture { Plum } } Hole(196, 236, 40, 116) Hole(196, 236, 164, 242) Hole(196, 236, 290, 356) Hole(280, 320, 40, 116) Hole(280, 320, 164, 242) Hole(280, 320, 290, 356) }
union { Win(196, 236, 40, 116) Win(196, 236, 164, 242) Win(196, 236, 290, 356) Win(280, 320, 40, 116) Win(280, 320, 164, 242) Win(280, 320, 290, 356) translate z * 2 }
union { RB(<170.5, 410, -8>, <430, 424, 4>, .5) texture { Trim } }
// pavement, kerb, lane, a tub with a clipped bay
union { box { <-600, -3, -96> <800, 0, 4> } texture { brick texture { pigment { rgb <.20, .17, .14> } finish { Flat } }, texture { pigment { bozo color_map { [0 rgb <.25, .15, .11>] [1 rgb <.33, .21, .16>] } scale 7 } finish { Flat } normal { bumps .3 scale 1 } } brick_size <8, 90, 4> mortar .35 } }
box { <-600, -8, -104> <800, .2, -96> texture { Stone } }
box { <-600, -8, -900> <800, -6, -104> pigment { bozo color_map { [0 rgb <.15, .15, .15>] [1 rgb <.19, .19, .185>] } scale 20 } finish { Flat } normal { bumps .3 scale 1.5 } }
union { cone { <72, 0, -14> 8 <72, 17, -14> 10.5 } torus { 10.4, .8 translate <72, 16.6, -14> } pigment { rgb <.33, .16, .10> } finish { Flat } }
union { #declare r5 = seed(3); #declare k = 0; #while (k < 420) #declare th = rand(r5) * 6.283; #declare ph = acos(2 * rand(r5) - 1); sphere { 0 1 scale <2.2, .6, 1.4> rotate <90 * rand(r5), 360 * rand(r5), 60 * rand(r5)> translate <72 + 12 * sin(ph) * cos(th), 44 + 13 * cos(ph), -14 + 12 * sin(ph) * sin(th)> pigment { rgb <.07, .13, .045> * (.5 + .9 * rand(r5)) } finish { Satin } } #declare k = k + 1; #end cylinder { <72, 16, -14> <72, 40, -14> 1.2 pigment { rgb <.12, .08, .05> } } sphere { <72, 44, -14> 11 pigment { rgb <.02, .04, .015> } } }
// leaves of a street tree hang in at the right, and shade the wall
union { #declare r6 = seed(11); #declare k = 0; #while (k < 900) #declare q = rand(r6); sphere { 0 1 scale <5, .5, 3> rotate <360 * rand(r6), 360 * rand(r6), 360 * rand(r6)> translate <250 + 150 * (rand(r6) - .35), 330 + 130 * (rand(r6) - .5), -210 + 100 * (rand(r6) - .5)> pigment { rgb <.13, .19, .05> * (.5 + .9 * rand(r6)) } finish { Satin } } #declare k = k + 1; #end }
box { <-1200, -8, -1300> <1400, 340, -1290> pigment { brick rgb .35 rgb <.28, .14, .10> brick_size <60, 100, 4> mortar 8 } no_image no_shadow }
sky_sphere { pigment { gradient y color_map { [0 rgb <.80, .86, .92>] [.4 rgb <.62, .76, .95>] [1 rgb <.34, .54, .90>] } } }
light_source { <-2600, 2100, -1500> rgb <1, .90, .74> * 1.25 area_light <60, 0, 0>, <0, 60, 0>, 4, 4 adaptive 1 jitter }
// a shift lens: the camera looks level and the frame is raised
camera { location <62, 60, -600> direction <.035, .222, 1> right x * 1.06 up y * .795 }
