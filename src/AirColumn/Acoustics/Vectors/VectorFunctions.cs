namespace AirColumn.Acoustics.Vectors;

/// <summary>A function of real numbers side by side.</summary>
/// <remarks>
/// A vector goes through a delegate by reference. By value, the interpreter of browsers hands a static method all but its first number
/// wrong.
/// </remarks>
internal delegate TValue VectorFunction<out TValue>(in RealVector x);

/// <summary>A function of a part of a column and of real numbers side by side.</summary>
/// <remarks>By reference, as <see cref="VectorFunction{TValue}"/>.</remarks>
internal delegate TValue VectorFunction<in TPart, out TValue>(TPart part, in RealVector x);
