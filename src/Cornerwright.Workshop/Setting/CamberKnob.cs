using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Setting;

/// <summary>The plate or clamp that sets a wheel's camber, in steps a hand can make.</summary>
internal static class CamberKnob
{
    /// <summary>A scale on a plate is read to this, m.</summary>
    private const double PlateStep = 0.001;

    /// <summary>A clamp is set with a gauge to about this, rad.</summary>
    private const double ClampStep = 0.1 * Math.PI / 180;

    /// <summary>
    /// Slide of the plate, m, and change at the clamp, rad, that bring the
    /// wanted camber nearest; 0 where nothing is wanted or nothing can be set.
    /// </summary>
    /// <param name="model">The car.</param>
    /// <param name="i">The corner.</param>
    /// <param name="travelFromNow">Where the wheel will stand, m from where it stands.</param>
    public static (double Plate, double Clamp) Find(SettingModel model, int i, double travelFromNow)
    {
        var place = Places.Corners[i];
        var start = model.Present.Build.At(place);
        if (model.Wish.At(place).Camber is not { } wanted || model.At(place, start, travelFromNow) is not { } untouched)
        {
            return (0, 0);
        }

        double off = wanted.Si - untouched.Camber;
        var mount = model.Corners[i].Plan.Parts.TopMount;
        if (mount is { SlideIn: not null, SlideOut: not null })
        {
            if (model.At(place, Set(start, PlateStep, 0), travelFromNow) is not { } nudged
                || !(Math.Abs(nudged.Camber - untouched.Camber) > 1e-7))
            {
                return (0, 0);
            }

            double slide = start.Slide?.Si ?? 0, steps = off / (nudged.Camber - untouched.Camber);
            double least = Math.Ceiling(((-mount.SlideOut!.Si - slide) / PlateStep) - 1e-9),
                most = Math.Floor(((mount.SlideIn!.Si - slide) / PlateStep) + 1e-9);
            return (least > most ? 0 : Math.Clamp(Math.Round(steps), least, most) * PlateStep, 0);
        }

        return model.Corners[i].Plan.Corner.Strut is not null ? (0, Math.Round(off / ClampStep) * ClampStep) : (0, 0);
    }

    public static CornerBuild Set(CornerBuild corner, double plate, double clamp) => corner with
    {
        Slide = plate == 0 ? corner.Slide : Setting((corner.Slide?.Si ?? 0) + plate, Units.Millimetre),
        ClampCamber = clamp == 0 ? corner.ClampCamber : Setting((corner.ClampCamber?.Si ?? 0) + clamp, Units.Degree),
    };

    public static Reading Setting(double si, Unit unit) =>
        new(Quantity.Of(Math.Round(unit.FromSi(si), 3), unit), null, ReadingSource.Setting);
}
