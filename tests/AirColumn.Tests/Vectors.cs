global using RealVector = System.Numerics.Vector<double>;
