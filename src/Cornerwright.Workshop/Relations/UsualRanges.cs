using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>
/// Where a number of a car usually lies, for fields that little else ties: in the unit in which
/// people read the field. Common practice, no source. Zero is let pass where it means "none".
/// </summary>
internal static class UsualRanges
{
    private static readonly Dictionary<(Type, string), (double Low, double High)> Table = new()
    {
        [(typeof(Car), "wheelbase")] = (1800, 3600),
        [(typeof(Car), "groundClearance")] = (75, 270),
        [(typeof(Car), "topSpeed")] = (120, 340),
        [(typeof(Axle), "track")] = (1150, 1800),
        [(typeof(Axle), "steeringArm")] = (80, 220),
        [(typeof(Axle), "tieRodPitch")] = (0.9, 3.1),
        [(typeof(Hub), "boltCircle")] = (95, 180),
        [(typeof(Hub), "centring")] = (50, 125),
        [(typeof(Hub), "thread")] = (9.5, 16),
        [(typeof(Corner), "unsprungMass")] = (20, 70),
        [(typeof(Corner), "camber")] = (-5, 2),
        [(typeof(Corner), "toe")] = (-0.6, 0.6),
        [(typeof(Corner), "droopLimit")] = (-160, -25),
        [(typeof(Corner), "metalContact")] = (40, 190),
        [(typeof(SteeringAxis), "kingpin")] = (6, 19),
        [(typeof(SteeringAxis), "caster")] = (0.5, 12),
        [(typeof(SteeringAxis), "hubOffset")] = (15, 140),
        [(typeof(SteeringAxis), "lock")] = (22, 46),
        [(typeof(SteeringAxis), "rackTravel")] = (45, 95),
        [(typeof(SteeringAxis), "bumpAtLock")] = (5, 110),
        [(typeof(SteeringAxis), "trailAtHub")] = (-35, 45),
        [(typeof(StrutPlace), "tyreToTube")] = (2, 90),
        [(typeof(StrutPlace), "lean")] = (-2, 14),
        [(typeof(StrutPlace), "lowerReference")] = (-180, 200),
        [(typeof(HubPoint), "inboard")] = (40, 420),
        [(typeof(HubPoint), "ahead")] = (-330, 330),
        [(typeof(HubPoint), "above")] = (-260, 420),
        [(typeof(DropLinkPlace), "bushesAhead")] = (-330, 330),
        [(typeof(DropLinkPlace), "bushesAbove")] = (-120, 120),
        [(typeof(BarLink), "thickness")] = (7, 40),
        [(typeof(Gap), "distance")] = (1, 230),
        [(typeof(Gap), "travel")] = (-150, 150),
        [(typeof(WheelMotion), "barRatio")] = (0.25, 1.05),
        [(typeof(WheelMotion), "camberGain")] = (-0.06, 0.012),
        [(typeof(WheelMotion), "springRatioChange")] = (-0.0022, 0.0022),
        [(typeof(WheelMotion), "damperRatioChange")] = (-0.003, 0.003),
        [(typeof(WheelMotion), "outboardPerTravel")] = (-0.3, 0.3),
        [(typeof(WheelMotion), "forwardPerTravel")] = (-0.3, 0.3),
        [(typeof(Wheel), "seatThickness")] = (6, 17),
        [(typeof(Wheel), "flangeThickness")] = (8, 17),
        [(typeof(Wheel), "spokeRoom")] = (25, 92),
        [(typeof(Wheel), "mass")] = (4, 26),
        [(typeof(Tyre), "shoulderDrop")] = (4.5, 15),
        [(typeof(Tyre), "mass")] = (5, 30),
        [(typeof(Spacer), "thickness")] = (2.5, 45),
        [(typeof(Spring), "activeCoils")] = (2, 14),
        [(typeof(Spring), "tensileStrength")] = (1200, 2300),
        [(typeof(Spring), "rate")] = (4, 350),
        [(typeof(Sheet), "thickness")] = (1.6, 28),
        [(typeof(Sheet), "collarHeight")] = (4, 15),
        [(typeof(Perch), "depth")] = (8, 23.5),
        [(typeof(Perch), "pitch")] = (1.2, 2.6),
        [(typeof(TopMount), "seatDrop")] = (-30, 58),
        [(typeof(TopMount), "rodDrop")] = (-30, 70),
        [(typeof(TopMount), "slideIn")] = (4, 32),
        [(typeof(TopMount), "slideOut")] = (4, 32),
        [(typeof(Damper), "tubeDiameter")] = (34, 68),
        [(typeof(Damper), "rodClosed")] = (9, 48),
        [(typeof(Damper), "rodForce")] = (90, 320),
        [(typeof(AntiRollBar), "diameter")] = (13, 38),
        [(typeof(AntiRollBar), "straightLength")] = (450, 1350),
        [(typeof(AntiRollBar), "arm")] = (110, 420),
        [(typeof(BarLink), "length")] = (50, 480),
        [(typeof(CornerBuild), "pressure")] = (1.5, 3.4),
        [(typeof(CornerBuild), "packer")] = (1, 40),
        [(typeof(CornerBuild), "clampCamber")] = (-2.5, 2.5),
        [(typeof(CornerBuild), "slide")] = (-25, 25),
    };

    /// <summary>Every reading of a record that has a usual range.</summary>
    public static void Look(RelationBook book, object record, string path)
    {
        foreach (var (at, owner, field, reading) in FieldWalk.Readings(record, path))
        {
            if (Table.TryGetValue((owner.GetType(), field.Name), out var usual) && !(reading.Si == 0 && usual.Low > 0 && field.MinSi <= 0))
            {
                Check(book, at, field, reading, usual.Low, usual.High);
            }
        }
    }

    private static void Check(RelationBook book, string path, FieldShape field, Reading reading, double low, double high)
    {
        double shown = field.Unit!.FromSi(reading.Si), wide = high - Math.Min(0, low);
        book.Add(Kinds.UsualRange, path, shown, new(low - wide, low, high, high + (3 * wide)),
            () => $"{field.Label} is {reading.Typed.Trim()}; "
                + FormattableString.Invariant($"{low:0.###} to {high:0.###} {field.Unit.Symbol}").TrimEnd() + " are usual on a car.",
            Num.Of(path, field.Label.ToLowerInvariant(), reading));
    }
}
