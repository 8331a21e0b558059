using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Mechanics.Tests.Springs;

/// <summary>
/// Facts of the trade. Common practice, no source: what people who do this work say they see. They are rough ("about"),
/// so the bands are wide, and each test states what it assumes to reach the number.
/// </summary>
public sealed class CommonPracticeTests
{
    private const double Inch = 0.0254;
    private const double KgfPerMm = 9806.65;

    // Common practice, no source: an 8 kgf/mm spring under the front corner of a car of about 1.5 t sinks about 2 in
    // from zero preload. Assumed: 50 to 58 % on the front axle, 40 kg unsprung a corner, a strut (MR 0.95 to 1).
    [Theory]
    [InlineData(0.50, 1.00)]
    [InlineData(0.54, 0.97)]
    [InlineData(0.58, 0.95)]
    public void Eight_kgf_per_mm_sinks_about_two_inches(double frontShare, double motionRatio)
    {
        double sprung = RideRates.WheelWeight(1500, frontShare) - (40 * RideRates.StandardGravity);
        double sag = RideRates.StaticDeflection(sprung / motionRatio, 8 * KgfPerMm);
        Assert.InRange(sag / Inch, 1.5, 2.5);
    }

    private static StackElement HelperOf(double rate) => StackElement.Linear(2.4 * Inch, 0.8 * Inch, rate);

    // Common practice, no source: a helper 2.4 in free and 0.8 in closed gives about 2.5 in at full droop and about 1 in
    // at ride. Assumed: a helper of 0.5 to 2 kgf/mm over an 8 kgf/mm main spring, 360 kgf at ride, a 2 to 4 mm adapter
    // between the two, which is what lies between 0.8 and "about 1", 2.4 and "about 2.5".
    [Theory]
    [InlineData(0.5, 0.002)]
    [InlineData(1.0, 0.003)]
    [InlineData(2.0, 0.004)]
    public void A_helper_with_its_adapter_takes_two_and_a_half_inches_at_droop_and_one_at_ride(double helperKgfPerMm, double adapter)
    {
        StackElement[] stack =
            [StackElement.Linear(7 * Inch, 3 * Inch, 8 * KgfPerMm), StackElement.Rigid(adapter), HelperOf(helperKgfPerMm * KgfPerMm)];
        double ride = 360 * RideRates.StandardGravity;
        double droop = SpringStack.ElementLength(stack, 1, 0) + SpringStack.ElementLength(stack, 2, 0);
        double closed = SpringStack.ElementLength(stack, 1, ride) + SpringStack.ElementLength(stack, 2, ride);
        Assert.True(SpringStack.IsClosed(stack, 2, ride));
        Assert.False(SpringStack.IsClosed(stack, 0, ride));
        Assert.InRange(droop / Inch, 2.4, 2.6);
        Assert.InRange(closed / Inch, 0.85, 1.05);
    }

    // Common practice, no source: going 2 to 2.5 in shorter in main spring is what a helper of that size makes good.
    // So where the long spring just touched at full droop, the short one with the helper leaves no more than a tenth of
    // an inch, and the short one alone would hang loose by all of it.
    [Theory]
    [InlineData(2.0)]
    [InlineData(2.25)]
    [InlineData(2.5)]
    public void A_helper_makes_good_a_main_spring_two_to_two_and_a_half_inches_shorter(double shorterInches)
    {
        double space = 9 * Inch;   // at full droop, filled by a 9 in spring without preload
        var main = StackElement.Linear(space - (shorterInches * Inch), 3 * Inch, 8 * KgfPerMm);
        var alone = SpringStack.ForceAt([main], space);
        var together = SpringStack.ForceAt([main, HelperOf(KgfPerMm)], space);
        Assert.Equal(StackState.Loose, alone.State);
        Assert.Equal(shorterInches, alone.Gap / Inch, 1e-9);
        Assert.InRange(together.Gap / Inch, 0, 0.1 + 1e-9);
    }

    // Common practice, no source: five collar turns lowered a strut's perch from 7.75 in to about 7.4 in. Read to a
    // tenth, that is a pitch between 1.5 and 2 mm; both usual pitches inside are tried.
    [Theory]
    [InlineData(0.00175)]
    [InlineData(0.0020)]
    public void Five_turns_down_take_a_third_of_an_inch(double pitch)
    {
        double perch = (7.75 * Inch) + Collar.Advance(-5, pitch);
        Assert.Equal(7.4, Math.Round(perch / Inch, 1));
        Assert.InRange(Collar.Turns(-0.35 * Inch, pitch), -5.2, -4.4);
    }

    // Common practice, no source: a quarter to half a turn trims for a driver alone. Assumed: 75 kg sitting 0.37 m off
    // the middle, 8 kgf/mm at four wheels on a 1.5 m track, bars that add as much roll stiffness as the springs,
    // pitch 1.5 to 2 mm. Each collar then makes good the sag at its own wheel.
    [Theory]
    [InlineData(0.0015)]
    [InlineData(0.0020)]
    public void A_quarter_to_half_a_turn_trims_for_the_driver(double pitch)
    {
        const double track = 1.5;
        double springs = 4 * 8 * KgfPerMm * track * track / 4;
        double roll = 75 * RideRates.StandardGravity * 0.37 / (2 * springs);
        Assert.InRange(Collar.Turns(roll * track / 2, pitch), 0.25, 0.5);
    }
}
