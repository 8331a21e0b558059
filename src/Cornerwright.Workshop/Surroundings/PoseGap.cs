using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>By what a thing near the wheel is known.</summary>
public enum NearKind
{
    /// <summary>Gaps read with a tape.</summary>
    Tape = 0,

    /// <summary>A piece of the strut, from its own readings and data sheets.</summary>
    Strut,

    /// <summary>A scan.</summary>
    Scan,

    /// <summary>The anti-roll bar's drop link, from the places of its ends.</summary>
    Link,
}

/// <summary>Something near one wheel.</summary>
/// <param name="Id">Unlike every other of the corner.</param>
/// <param name="Name">For people.</param>
/// <param name="OnBody">False for what moves with the wheel.</param>
/// <param name="Kind">By what it is known.</param>
/// <param name="WantedToTyre">m.</param>
/// <param name="WantedToRim">m.</param>
public sealed record NearThing(string Id, string Name, bool OnBody, NearKind Kind, double WantedToTyre, double WantedToRim);

/// <summary>The gap to one thing at one pose.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Gap">m, negative where they overlap; what thinning may have moved is taken off.</param>
/// <param name="Part">Of the wheel.</param>
/// <param name="OnWheel">Nearest place of the wheel in S (a, 12, 3), m.</param>
/// <param name="OnThing">Of the thing, likewise.</param>
public sealed record PoseGap(NearThing Thing, double Gap, WheelPart Part, Vec3 OnWheel, Vec3 OnThing)
{
    /// <summary>The gap wanted here, m.</summary>
    public double Wanted => Part == WheelPart.Tyre ? Thing.WantedToTyre : Thing.WantedToRim;

    /// <summary>What is left above the gap wanted, m.</summary>
    public double InHand => Gap - Wanted;

    /// <summary>Clock position of the nearest place, hours.</summary>
    public double Clock => Mechanics.Motion.Clock.HoursOf(Math.Abs(OnThing.Y) + Math.Abs(OnThing.Z) > 1e-9 ? OnThing : OnWheel);
}

/// <summary>The least gap to anything of the body over every pose that is allowed, as an interval.</summary>
/// <param name="Lower">m: no pose comes nearer. Minus infinity when nothing can be said.</param>
/// <param name="Upper">m: the pose named is as near.</param>
/// <param name="Place">That pose.</param>
/// <param name="Thing">What it is nearest to.</param>
/// <param name="Why">How it ended.</param>
public sealed record LeastGap(double Lower, double Upper, PosePlace Place, NearThing Thing, CertifyingStop Why);
