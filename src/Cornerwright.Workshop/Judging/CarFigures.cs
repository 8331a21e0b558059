using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Judging;

/// <summary>Figures of the whole car that no corner has alone.</summary>
internal static class CarFigures
{
    public static IEnumerable<Figure> For(Car car)
    {
        if (car.LoadCases is [{ FrontLeft: { } fl, FrontRight: { } fr, RearLeft: { } rl, RearRight: { } rr } load, ..])
        {
            double total = fl.Si + fr.Si + rl.Si + rr.Si;
            yield return new Figure("mass", $"Mass, {load.Name}", "car", null, new Measure(total, Units.Kilogram, 0), null);
            yield return new Figure("front-share", "Carried by the front", "car", null,
                new Measure((fl.Si + fr.Si) / total, Units.Percent, 1), null);
            yield return new Figure("cross-weight", "Cross weight (right front and left rear)", "car", null,
                new Measure((fr.Si + rl.Si) / total, Units.Percent, 1), null);
        }
    }
}
