using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Setting;

namespace Cornerwright.Workshop.Setting;

/// <summary>How one collar is turned.</summary>
/// <param name="Quarters">Quarter turns, up positive.</param>
/// <param name="Exact">Turns that would hit the targets best, up positive: what rounding starts from.</param>
/// <param name="Pitch">Rise of the seat for one turn, m.</param>
/// <param name="Before">Perch height now, m.</param>
/// <param name="Least">Lowest place on the thread, m; null where nobody measured it.</param>
/// <param name="Most">Highest place, lock ring on the thread, m.</param>
public sealed record CollarMove(int Quarters, double Exact, double Pitch, double Before, double? Least, double? Most)
{
    public double Turns => Quarters / 4.0;

    /// <summary>m, up positive.</summary>
    public double Rise => Turns * Pitch;

    public double After => Before + Rise;
}

/// <summary>One corner of the table.</summary>
public sealed record CornerSetting
{
    public required CornerPlace Corner { get; init; }
    public required WheelState Present { get; init; }
    public required CornerWish Wanted { get; init; }

    /// <summary>With everything of the table done, and the people or ballast wanted on board.</summary>
    public required WheelState Predicted { get; init; }

    /// <summary>Null for a seat that does not turn.</summary>
    public CollarMove? Collar { get; init; }

    /// <summary>Slide of the top plate, m, inward positive; 0 where it stays.</summary>
    public double Plate { get; init; }

    /// <summary>Change of camber at the clamp, rad; 0 where it stays.</summary>
    public double Clamp { get; init; }

    /// <summary>Flats (sixths of a turn) of the tie rod toward toe-in; null where only the angle can be said.</summary>
    public int? Flats { get; init; }

    /// <summary>Change of toe to be made at the tie rod, rad, toe-in positive; 0 where it stays.</summary>
    public double ToeChange { get; init; }

    /// <summary>Parts and settings of this corner once all is done.</summary>
    public required CornerBuild After { get; init; }

    /// <summary>By how much the readings disagree with the springs, m of stack length; the table works from the readings.</summary>
    public double Correction { get; init; }

    public int Moves => (Collar is { Quarters: not 0 } ? 1 : 0) + (Plate != 0 ? 1 : 0) + (Clamp != 0 ? 1 : 0) + (ToeChange != 0 ? 1 : 0);
}

/// <summary>One thing to do, in the order in which it is to be done.</summary>
/// <param name="Words">As an order.</param>
/// <param name="Corner">Where; null for the whole car.</param>
/// <param name="Caution">What can go wrong at this step; empty where nothing can.</param>
public sealed record SettingStep(string Words, CornerPlace? Corner = null, string Caution = "");

/// <summary>What to turn where, in which order, and what comes of it.</summary>
public sealed record TurnTable
{
    public required Build Build { get; init; }
    public required SettingWish Wish { get; init; }
    public required PresentFrom From { get; init; }

    /// <summary>Where the loads come from, in words.</summary>
    public required string LoadsFrom { get; init; }

    /// <summary>In the order of <see cref="Places.Corners"/>.</summary>
    public required IReadOnlyList<CornerSetting> Corners { get; init; }

    /// <summary>Right front and left rear, share of the whole.</summary>
    public required double CrossNow { get; init; }

    public required double CrossPredicted { get; init; }

    /// <summary>What the collars could reach if they need not stop at quarter turns; null where the exact answer was not found.</summary>
    public double? CrossExact { get; init; }

    /// <summary>Least and greatest cross weight with all four wheels on the ground.</summary>
    public required (double Least, double Greatest) CrossRange { get; init; }

    public required IReadOnlyList<SettingStep> Steps { get; init; }

    /// <summary>What is not reached, and why.</summary>
    public required IReadOnlyList<string> Shortfalls { get; init; }

    public required IReadOnlyList<string> Assumptions { get; init; }

    public int Moves => Corners.Sum(c => c.Moves);

    /// <summary>Nothing is to be turned and nothing is missed: the car is set.</summary>
    public bool Done => Moves == 0 && Shortfalls.Count == 0;

    public CornerSetting At(CornerPlace corner) => Corners[(int)corner];

    /// <summary>The build with everything of the table done.</summary>
    public Build AfterTurning => Corners.Aggregate(Build, (build, c) => build.With(c.Corner, c.After));

    /// <summary>Greatest miss of a wanted height after rounding, m; null where no height is wanted.</summary>
    public double? HeightMiss =>
        Corners.Where(c => c.Wanted.Height is not null).Select(c => (double?)Math.Abs(c.Predicted.Height - c.Wanted.Height!.Si)).Max();
}
