#declare S = 18;
#include "studio.inc"
Sweep(<.33, .325, .31>)
#declare Dark = texture { pigment { bozo color_map { [0 rgb <.055, .042, .03>] [1 rgb <.09, .065, .042>] } scale 2 } finish { ambient 0 diffuse .6 specular .4 roughness .03 metallic reflection { rgb <.22, .17, .12> metallic } } };
union {
  #declare k = 0; #while (k < 6)
    union { cylinder { <4.0, 2, 0> <5.4, 14, 0> .22 } sphere { <4.0, 2, 0> .34 } sphere { <5.4, 14, 0> .34 } cylinder { <5.4, 14, 0> <1.2, 18.6, 0> .2 } rotate y * k * 60 }
    cylinder { <4.0 * cos(radians(k * 60)), 2, 4.0 * sin(radians(k * 60))> <4.0 * cos(radians(k * 60 + 60)), 2, 4.0 * sin(radians(k * 60 + 60))> .22 }
    cylinder { <5.4 * cos(radians(k * 60)), 14, 5.4 * sin(radians(k * 60))> <5.4 * cos(radians(k * 60 + 60)), 14, 5.4 * sin(radians(k * 60 + 60))> .24 }
    #declare k = k + 1; #end
  cylinder { <0, 18.2, 0> <0, 19, 0> 1.5 } torus { 1.45, .16 translate y * 18.3 } cone { <0, 19, 0> 1.3 <0, 20, 0> .4 } torus { .62, .14 rotate x * 90 translate y * 20.6 }
  cylinder { <0, 15.2, 0> <0, 18.4, 0> .16 } cylinder { <0, 2, 0> <0, 1.2, 0> .3 }
  cylinder { <-4, 2, 0> <4, 2, 0> .16 } cylinder { <0, 2, 0> <0, 5.6, 0> .2 } cylinder { <0, 5.4, 0> <0, 6, 0> 1.5 }
  #declare k = 0; #while (k < 3) cylinder { <1.3 * cos(k * 2.094), 5.8, 1.3 * sin(k * 2.094)> <1.3 * cos(k * 2.094), 6.4, 1.3 * sin(k * 2.094)> .62 } #declare k = k + 1; #end
  #declare k = 0; #while (k < 9) torus { .42, .1 scale <1, 1, 1.5> rotate x * 90 rotate y * mod(k, 2) * 90 translate y * (21.4 + k * .95) } #declare k = k + 1; #end
  texture { Dark } }
union { #declare k = 0; #while (k < 3) cylinder { <1.3 * cos(k * 2.094), 6.4, 1.3 * sin(k * 2.094)> <1.3 * cos(k * 2.094), 9.6, 1.3 * sin(k * 2.094)> .38 } #declare k = k + 1; #end pigment { rgb <.78, .74, .64> } finish { Satin } }
union { #declare k = 0; #while (k < 3) sphere { 0 1 scale <.5, 1.1, .5> translate <1.3 * cos(k * 2.094), 10.7, 1.3 * sin(k * 2.094)> } #declare k = k + 1; #end pigment { rgb 1 } finish { diffuse .2 emission 1.5 * <1, .82, .52> } no_shadow }
light_source { <0, 10.7, 0> rgb <1, .80, .50> * .5 fade_distance 9 fade_power 2 shadowless }
#declare k = 0; #while (k < 6)
  #declare c0 = radians(k * 60); #declare c1 = radians(k * 60 + 60);
  mesh { triangle { <4 * cos(c0), 2, 4 * sin(c0)> <4 * cos(c1), 2, 4 * sin(c1)> <5.4 * cos(c0), 14, 5.4 * sin(c0)> } triangle { <4 * cos(c1), 2, 4 * sin(c1)> <5.4 * cos(c1), 14, 5.4 * sin(c1)> <5.4 * cos(c0), 14, 5.4 * sin(c0)> }
    texture { pigment { rgbt <.97, .98, .96, .95> } finish { ambient 0 diffuse .02 specular .4 roughness .003 reflection { .05, .28 } } normal { bumps .03 scale 1.6 } } no_shadow }
  #declare k = k + 1; #end
Shot(<0, 12.0, 0>, 70, -15, 2, 27)
