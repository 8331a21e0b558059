using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion;

/// <summary>A planar point moving with one parameter, with its first and second derivative.</summary>
internal readonly record struct JetPoint(Jet Outboard, Jet Up)
{
    public static JetPoint Fixed(PlanarPoint p) => new(new(p.Outboard, 0, 0), new(p.Up, 0, 0));
    public static JetPoint operator +(JetPoint a, JetPoint b) => new(a.Outboard + b.Outboard, a.Up + b.Up);
    public static JetPoint operator -(JetPoint a, JetPoint b) => new(a.Outboard - b.Outboard, a.Up - b.Up);
    public static JetPoint operator +(JetPoint a, PlanarPoint b) => new(a.Outboard + b.Outboard, a.Up + b.Up);
    public static JetPoint operator *(JetPoint a, Jet k) => new(a.Outboard * k, a.Up * k);
    public JetPoint QuarterTurn() => new(Up * -1, Outboard);
    public Jet LengthSquared() => (Outboard * Outboard) + (Up * Up);
}

/// <summary>A planar rotation (from outboard towards up) moving with one parameter.</summary>
internal readonly record struct JetTurn(Jet Cos, Jet Sin)
{
    /// <summary>Turn by the parameter itself.</summary>
    public static JetTurn ByParameter(double angle)
    {
        var (s, c) = Math.SinCos(angle);
        return new(new(c, -s, -c), new(s, c, -s));
    }

    /// <summary>
    /// The turn that carries the fixed vector <paramref name="from"/> to <paramref name="to"/>, both of the given squared length.
    /// </summary>
    public static JetTurn Between(PlanarPoint from, JetPoint to, double lengthSquared) =>
        new(((to.Outboard * from.Outboard) + (to.Up * from.Up)) * (1 / lengthSquared),
            ((to.Up * from.Outboard) - (to.Outboard * from.Up)) * (1 / lengthSquared));

    public JetPoint Apply(PlanarPoint p) =>
        new((Cos * p.Outboard) - (Sin * p.Up), (Sin * p.Outboard) + (Cos * p.Up));

    public double Angle => Math.Atan2(Sin.V, Cos.V);
}
