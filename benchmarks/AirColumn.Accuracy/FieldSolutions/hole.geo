// One side hole in a bore of radius 1: radius d, wall t, half of the T (z > 0) and half of that (x > 0). Lengths in radii of the bore.
// Physical surfaces: 1 the end of the bore's arm, 2 the plane of symmetry z = 0, 3 the sphere round an open hole, 4 rigid walls.
SetFactory("OpenCASCADE");
DefineConstant[ d = 0.6 ]; // radius of the hole
DefineConstant[ t = 0.5333 ]; // its height, the thickness of the wall
DefineConstant[ L = 3 ]; // the arm
DefineConstant[ R = 8 ]; // the sphere
DefineConstant[ isOpen = 1 ];
DefineConstant[ f = 1 ]; // a factor of all sizes of elements
r = 1 + t;
top = isOpen ? r + 0.2*d : r;
Cylinder(1) = {0, 0, 0, 0, 0, L, 1, Pi};
Cylinder(2) = {0, 0, 0, 0, 0, top, d, Pi/2};
Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{1}; }
Rotate{ {1,0,0}, {0,0,0}, -Pi/2 }{ Volume{2}; }
Rotate{ {0,1,0}, {0,0,0}, -Pi/2 }{ Volume{2}; }
If(isOpen)
  Sphere(3) = {0, 0, 0, R, 0, Pi/2, Pi};
  Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{3}; }
  Translate{0, r, 0}{ Volume{3}; }
  Cylinder(4) = {0, 0, 0, 0, 0, 2*R, r, Pi};
  Rotate{ {0,0,1}, {0,0,0}, -Pi/2 }{ Volume{4}; }
  BooleanDifference(5) = { Volume{3}; Delete; }{ Volume{4}; Delete; };
EndIf
v() = Volume{:};
BooleanFragments{ Volume{v()}; Delete; }{}
e = 1e-3;
inlet() = Surface In BoundingBox{-e, -1-e, L-e, 1+e, 1+e, L+e};
mid() = Surface In BoundingBox{-e, -3*R, -e, 3*R, 3*R, e};
every() = Surface{:};
Physical Surface(1) = {inlet()};
Physical Surface(2) = {mid()};
outer() = {};
If(isOpen)
  // What reaches farthest from the hole is the sphere.
  For i In {0:#every()-1}
    b() = BoundingBox Surface{every(i)};
    If(b(3) > R-2*e && b(5) > R/2)
      outer() += {every(i)};
    EndIf
  EndFor
  // The planes of symmetry reach there too: they are flat.
  ball() = {};
  For i In {0:#outer()-1}
    b() = BoundingBox Surface{outer(i)};
    If(b(3)-b(0) > e && b(5)-b(2) > e)
      ball() += {outer(i)};
    EndIf
  EndFor
  Physical Surface(3) = {ball()};
EndIf
walls() = every();
walls() -= {inlet()};
walls() -= {mid()};
If(isOpen)
  walls() -= {ball()};
EndIf
Physical Surface(4) = {walls()};
Physical Volume(10) = {Volume{:}};
// Fine at the two rims, and no coarser in the bore than its roundness asks for.
rims = "sqrt((sqrt(x^2+z^2)-%g)^2 + 0.5*((y-1)^2*(y-%g)^2/(0.2+(y-1)^2+(y-%g)^2)))";
Field[1] = MathEval;
Field[1].F = Sprintf(StrCat("%g*(0.03*%g + 0.3*", rims, ")"), f, d, d, r, r);
Field[2] = MathEval;
Field[2].F = Sprintf("%g*(0.22 + 0.5*(sqrt(x^2+y^2)-1.3 + fabs(sqrt(x^2+y^2)-1.3)))", f);
Field[3] = Min;
Field[3].FieldsList = {1,2};
Background Field = 3;
Mesh.MeshSizeExtendFromBoundary = 0;
Mesh.MeshSizeFromPoints = 0;
Mesh.MeshSizeMax = R/4;
Mesh.Algorithm3D = 10;
Mesh.MshFileVersion = 2.2;
