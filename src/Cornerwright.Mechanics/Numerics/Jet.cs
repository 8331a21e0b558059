namespace Cornerwright.Mechanics.Numerics;

/// <summary>A number with its exact first and second derivative by one parameter.</summary>
/// <remarks>Arithmetic on truncated Taylor series, so derivatives are exact to rounding and no step size is chosen.
/// Source: Griewank and Walther, Evaluating Derivatives, 2nd ed. (2008), ch. 13.</remarks>
internal readonly record struct Jet(double V, double D, double DD)
{
    public static Jet operator +(Jet a, Jet b) => new(a.V + b.V, a.D + b.D, a.DD + b.DD);
    public static Jet operator -(Jet a, Jet b) => new(a.V - b.V, a.D - b.D, a.DD - b.DD);
    public static Jet operator *(Jet a, Jet b) =>
        new(a.V * b.V, (a.D * b.V) + (a.V * b.D), (a.DD * b.V) + (2 * a.D * b.D) + (a.V * b.DD));
    public static Jet operator *(Jet a, double k) => new(a.V * k, a.D * k, a.DD * k);
    public static Jet operator +(Jet a, double k) => a with { V = a.V + k };

    public Jet Inverse()
    {
        double v = 1 / V;
        return new(v, -D * v * v, v * v * ((2 * D * D * v) - DD));
    }

    public Jet Sqrt()
    {
        double v = Math.Sqrt(V);
        double d = D / (2 * v);
        return new(v, d, ((DD / 2) - (d * d)) / v);
    }
}
