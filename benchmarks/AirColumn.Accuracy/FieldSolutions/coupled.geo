// A side hole in a bore of radius 1 at a distance h from the plane z = 0, the half x > 0. Lengths in radii of the bore. The tube goes on towards greater z.
// ends = 0: z = 0 is a plane of symmetry, of two holes for h > 0 and of one for h = 0. ends = 1: the tube ends there, open.
// Physical surfaces: 1 the end of the bore's arm, 2 the plane of symmetry z = 0, in the bore and outside, 3 the sphere.
SetFactory("OpenCASCADE");
DefineConstant[ d = 0.6 ]; // radius of the hole
DefineConstant[ t = 0.4 ]; // its height, the thickness of the wall
DefineConstant[ h = 1.6 ]; // its axis from the plane z = 0
DefineConstant[ ends = 0 ];
DefineConstant[ L = 3 ]; // the arm, from the axis of the hole
DefineConstant[ R = 24 ]; // the sphere; its centre is on the axis of the bore, at z = 0 or between the hole and the end
DefineConstant[ f = 1 ]; // a factor of all sizes of elements
r = 1 + t;
Cylinder(1) = {0, 0, 0, 0, 0, h+L, 1, Pi};
Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{1}; }
Cylinder(2) = {0, 0, 0, 0, 0, r + 0.2*d, d, h > 0 ? Pi : Pi/2};
Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{2}; }
Rotate{ {1,0,0}, {0,0,0}, -Pi/2 }{ Volume{2}; }
Translate{0, 0, h}{ Volume{2}; }
Sphere(3) = {0, 0, 0, R, ends ? -Pi/2 : 0, Pi/2, Pi};
Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{3}; }
Translate{0, 0, ends ? h/2 : 0}{ Volume{3}; }
Cylinder(4) = {0, 0, 0, 0, 0, 2*R, r, Pi};
Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{4}; }
BooleanDifference(5) = { Volume{3}; Delete; }{ Volume{4}; Delete; };
v() = Volume{:};
BooleanFragments{ Volume{v()}; Delete; }{}
e = 1e-3;
every() = Surface{:};
inlet() = Surface In BoundingBox{-e, -1-e, h+L-e, 1+e, 1+e, h+L+e};
Physical Surface(1) = {inlet()};
If(!ends)
  mid() = Surface In BoundingBox{-e, -2*R, -e, 2*R, 2*R, e};
  Physical Surface(2) = {mid()};
EndIf
// What reaches as far as the sphere and is not flat.
ball() = {};
For i In {0:#every()-1}
  b() = BoundingBox Surface{every(i)};
  If(b(3) > R-2*e && b(5)-b(2) > e)
    ball() += {every(i)};
  EndIf
EndFor
Physical Surface(3) = {ball()};
Physical Volume(10) = {Volume{:}};
// Fine at the rims of the hole and of the open end, and no coarser at the tube than its roundness asks for.
q = "sqrt(x^2+y^2)";
near = Sprintf(StrCat("(", q, "-1)^2*(", q, "-%g)^2/(1e-9+(", q, "-1)^2+(", q, "-%g)^2)"), r, r);
Field[1] = MathEval;
Field[1].F = Sprintf(StrCat("%g*(0.03*%g + 0.3*sqrt((sqrt(x^2+(z-%g)^2)-%g)^2 + (fabs(y)-y)^2 + ", near, "))"), f, d, h, d);
Field[2] = MathEval;
Field[2].F = Sprintf(StrCat("%g*(0.22 + 0.25*(", q, "-1.3 + fabs(", q, "-1.3)) + 0.15*(fabs(z)-z) + 0.025*sqrt(x^2+y^2+(z-%g)^2))"), f, h);
fields() = {1, 2};
If(ends)
  Field[3] = MathEval;
  Field[3].F = Sprintf(StrCat("%g*(0.03 + 0.3*sqrt(z^2 + ", near, "))"), f);
  fields() += {3};
EndIf
Field[4] = Min;
Field[4].FieldsList = {fields()};
Background Field = 4;
Mesh.MeshSizeExtendFromBoundary = 0;
Mesh.MeshSizeFromPoints = 0;
Mesh.MeshSizeMax = f*R/12;
Mesh.Algorithm3D = 10;
Mesh.MshFileVersion = 2.2;
