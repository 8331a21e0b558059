using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>
/// A drop link on the demo's front by kinematics of the test's own: the wheel's pose straight ahead is taken from the corner, everything
/// after it is written out here (rotation about the kingpin, the bar's end by halving its swing, the gap by points along the link).
/// </summary>
internal sealed class HandLink
{
    private const int Along = 60, Travels = 21, Steers = 33;
    private const double Degree = Math.PI / 180;

    private readonly CornerClearance _corner;
    private readonly SteeringAxis _steering;
    private readonly Vec3 _onKnuckle, _end, _pivot;
    private readonly double _length, _radius, _side;
    private readonly double[] _buffer;
    private readonly (TyreSection Tyre, RimSection Rim) _sections;

    /// <param name="car">Allowances none, motion by ratios.</param>
    /// <param name="build">Its clamp may differ where the link is on the knuckle.</param>
    /// <param name="place">Front.</param>
    /// <param name="longer">By how much its link is longer than the present one, m.</param>
    /// <param name="thickness">Of its link, m.</param>
    public HandLink(Car car, string build, CornerPlace place, double longer, double thickness)
    {
        _corner = CornerClearance.Of(car, car.Build(build)!, place);
        (_steering, _side, _radius) = (car.At(place).Steering!, place.IsLeft() ? 1 : -1, thickness / 2);
        var link = car.At(place).DropLink!;
        Vec3 outer = Point(link.Outer!);
        _end = Point(link.BarEnd!);
        _pivot = _end + new Vec3(link.BushesAhead!.Si, 0, link.BushesAbove!.Si);
        _length = (outer - _end).Length + longer;
        Assert.True(CornerClearance.Of(car, car.Build(car.MeasuredBuild)!, place).TryPose(0, 0, out var now));
        var (a, u, v) = Axes(now);
        Vec3 off = outer - now.HubFace;
        _onKnuckle = new(off.Dot(a), off.Dot(u), off.Dot(v));
        _sections = _corner.Numbers.Corner.Clearance.Sections(_corner.Numbers, forBody: true);
        _buffer = new double[WheelSolid.BufferLength(12)];
    }

    /// <summary>The least gap over a dense grid of travel and steer, refined three times round its least, m.</summary>
    public (double Gap, double Travel, double Steer) Least()
    {
        var box = _corner.Box;
        var best = Over(box.Least.Travel, box.Most.Travel, box.Least.Steer, box.Most.Steer);
        double dz = (box.Most.Travel - box.Least.Travel) / (Travels - 1), ds = (box.Most.Steer - box.Least.Steer) / (Steers - 1);
        for (int round = 0; round < 3; round++, dz /= 8, ds /= 8)
        {
            var finer = Over(
                Math.Max(box.Least.Travel, best.Travel - dz), Math.Min(box.Most.Travel, best.Travel + dz),
                Math.Max(box.Least.Steer, best.Steer - ds), Math.Min(box.Most.Steer, best.Steer + ds));
            best = finer.Gap < best.Gap ? finer : best;
        }

        return best;
    }

    /// <summary>The gap at one pose, m.</summary>
    public double Gap(double travel, double steer)
    {
        Assert.True(_corner.TryPose(travel, 0, out var straight));
        var (a, u, v) = Axes(straight);
        Vec3 outer = straight.HubFace + (a * _onKnuckle.X) + (u * _onKnuckle.Y) + (v * _onKnuckle.Z);

        // The kingpin: through a point at hub height, leaning by its two angles; the wheel turns a little less the higher it is.
        Vec3 k = Unit(new(-Math.Tan(_steering.Caster!.Si), -_side * Math.Tan(_steering.Kingpin!.Si), 1));
        Vec3 pin = straight.HubFace + new Vec3(_steering.TrailAtHub!.Si, -_side * _steering.HubOffset!.Si, 0);
        double turn = About(k, straight.Spindle, steer * (1 - (0.5 * travel)));
        outer = pin + Turned(outer - pin, k, turn);
        Vec3 hub = pin + Turned(straight.HubFace - pin, k, turn), spindle = Turned(straight.Spindle, k, turn);
        Assert.True(_corner.TryPose(travel, steer, out var steered));
        Assert.True((hub - steered.HubFace).Length < 1e-9 && (spindle - steered.Spindle).Length < 1e-9, $"{hub} {steered.HubFace}");

        Vec3 end = BarEnd(outer);
        var wheel = WheelSolid.Write(_sections.Tyre, _sections.Rim, 12, _buffer);
        var (sa, su, sv) = Axes(new(hub, spindle));
        Vec3 In(Vec3 p) => new((p - hub).Dot(sa), (p - hub).Dot(su), (p - hub).Dot(sv));
        Vec3 from = In(outer), to = In(end);
        double best = double.PositiveInfinity, at = 0;
        for (int i = 0; i <= Along; i++)
        {
            double here = wheel.SignedDistance(from + ((to - from) * ((double)i / Along)));
            (best, at) = here < best ? (here, (double)i / Along) : (best, at);
        }

        for (double step = 1.0 / Along; step > 1e-6; step /= 2)
        {
            foreach (double next in (double[])[Math.Max(0, at - step), Math.Min(1, at + step)])
            {
                double here = wheel.SignedDistance(from + ((to - from) * next));
                (best, at) = here < best ? (here, next) : (best, at);
            }
        }

        return best - _radius;
    }

    // The angle about the leaning kingpin at which the road wheel, seen from above, has turned by so much: by halving.
    private double About(Vec3 k, Vec3 spindle, double steer)
    {
        double Heading(Vec3 s) => Math.Atan2(-_side * s.X, _side * s.Y);
        double low = steer - 0.3, high = steer + 0.3, from = Heading(spindle);
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Heading(Turned(spindle, k, middle)) - from < steer ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    private (double Gap, double Travel, double Steer) Over(double low, double high, double right, double left)
    {
        var best = (Gap: double.PositiveInfinity, Travel: 0.0, Steer: 0.0);
        for (int j = 0; j < Steers; j++)
        {
            double steer = right + ((left - right) * j / (Steers - 1));
            double top = Math.Min(high, _corner.Box.AllowedBump(steer));
            for (int i = 0; i < Travels && top >= low; i++)
            {
                double travel = low + ((top - low) * i / (Travels - 1)), gap = Gap(travel, steer);
                best = gap < best.Gap ? (gap, travel, steer) : best;
            }
        }

        return best;
    }

    // Out from where it stood, either way, until the link is as long as it is; then halved.
    private Vec3 BarEnd(Vec3 outer)
    {
        double Short(double swing) => (outer - Swung(swing)).Length - _length;
        const double Step = 0.5 * Degree;
        for (int i = 0; i < 180; i++)
        {
            foreach (double way in (double[])[1, -1])
            {
                double from = way * i * Step, to = way * (i + 1) * Step;
                if (Short(from) > 0 == Short(to) > 0)
                {
                    continue;
                }

                for (int k = 0; k < 50; k++)
                {
                    double middle = 0.5 * (from + to);
                    (from, to) = Short(from) > 0 == Short(middle) > 0 ? (middle, to) : (from, middle);
                }

                return Swung(from);
            }
        }

        throw new InvalidOperationException("The bar's end does not reach the link: not a car for this test.");
    }

    private Vec3 Swung(double swing)
    {
        Vec3 arm = _end - _pivot;
        var (sin, cos) = Math.SinCos(swing);
        return new(_pivot.X + (arm.X * cos) + (arm.Z * sin), _end.Y, _pivot.Z + (arm.Z * cos) - (arm.X * sin));
    }

    private Vec3 Point(HubPoint p) => new(p.Ahead!.Si, -_side * p.Inboard!.Si, p.Above!.Si);

    private static (Vec3 Axis, Vec3 Up, Vec3 Three) Axes(in WheelPose pose)
    {
        Vec3 a = pose.Spindle, up = Unit(new Vec3(0, 0, 1) - (a * a.Z));
        return (a, up, new((up.Y * a.Z) - (up.Z * a.Y), (up.Z * a.X) - (up.X * a.Z), (up.X * a.Y) - (up.Y * a.X)));
    }

    private static Vec3 Unit(Vec3 v) => v / Math.Sqrt(v.Dot(v));

    // Rodrigues' formula.
    private static Vec3 Turned(Vec3 p, Vec3 k, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        var across = new Vec3((k.Y * p.Z) - (k.Z * p.Y), (k.Z * p.X) - (k.X * p.Z), (k.X * p.Y) - (k.Y * p.X));
        return (p * cos) + (across * sin) + (k * (k.Dot(p) * (1 - cos)));
    }
}
