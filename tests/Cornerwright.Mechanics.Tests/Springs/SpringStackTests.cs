using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Mechanics.Tests.Springs;

public sealed class SpringStackTests
{
    private static readonly StackElement Main = StackElement.Linear(0.180, 0.080, 60_000);
    private static readonly StackElement Helper = StackElement.Linear(0.060, 0.020, 20_000);
    private static readonly StackElement Sheet = StackElement.Rigid(0.003);

    [Fact]
    public void A_space_longer_than_the_free_stack_leaves_a_gap_and_no_force()
    {
        var found = SpringStack.ForceAt([Main, Helper, Sheet], 0.250);
        Assert.Equal(StackState.Loose, found.State);
        Assert.Equal(0, found.Force);
        Assert.Equal(0.007, found.Gap, 1e-12);
        Assert.Equal(0, found.Overrun);
    }

    [Fact]
    public void A_space_equal_to_the_free_stack_is_seated_without_force()
    {
        StackElement[] stack = [Main, Helper, Sheet];
        var found = SpringStack.ForceAt(stack, SpringStack.FreeLength(stack));
        Assert.Equal(new StackForce(0, StackState.Seated, 0, 0), found);
    }

    // Series rule: 1/(1/60 + 1/20) = 15 N/mm while both are open; the helper closes at 20 N/mm x 40 mm = 800 N.
    [Theory]
    [InlineData(0.243 - 0.010, 150, ElementState.Open)]
    [InlineData(0.243 - (0.040 + (800.0 / 60_000)), 800, ElementState.Closed)]
    [InlineData(0.243 - (0.040 + (2000.0 / 60_000)), 2000, ElementState.Closed)]
    public void Seated_stack_follows_both_springs_then_the_main_alone(double length, double force, ElementState helper)
    {
        var found = SpringStack.ForceAt([Main, Helper, Sheet], length);
        Assert.Equal(StackState.Seated, found.State);
        Assert.Equal(force, found.Force, 1e-9 * force);
        Assert.Equal(helper, Helper.StateAt(Math.Round(found.Force, 6)));
        Assert.Equal(ElementState.Open, Main.StateAt(found.Force));
    }

    [Fact]
    public void A_space_shorter_than_the_solid_stack_is_bound_by_the_difference()
    {
        var found = SpringStack.ForceAt([Main, Helper, Sheet], 0.100);
        Assert.Equal(StackState.Bound, found.State);
        Assert.Equal(6000, found.Force, 1e-9);     // the main spring's 60 N/mm x 100 mm
        Assert.Equal(0.003, found.Overrun, 1e-12);
        Assert.Equal(0, found.Gap);
    }

    [Fact]
    public void Rate_is_the_series_rate_then_the_main_spring_then_none()
    {
        StackElement[] stack = [Helper, Sheet, Main];
        Assert.Equal(15_000, SpringStack.TangentRateAt(stack, 0)!.Value, 1e-9);
        Assert.Equal(15_000, SpringStack.TangentRateAt(stack, 799.9)!.Value, 1e-9);
        Assert.Equal(60_000, SpringStack.TangentRateAt(stack, 800)!.Value, 1e-9);
        Assert.Null(SpringStack.TangentRateAt(stack, 6000));
        Assert.Null(SpringStack.TangentRateAt([Sheet], 0));
    }

    [Fact]
    public void A_stack_of_rigid_pieces_is_loose_or_bound_and_an_empty_one_too()
    {
        Assert.Equal(StackState.Loose, SpringStack.ForceAt([Sheet], 0.004).State);
        var bound = SpringStack.ForceAt([Sheet, Sheet], 0.005);
        Assert.Equal((StackState.Bound, 0.0), (bound.State, bound.Force));
        Assert.Equal(0.001, bound.Overrun, 1e-12);
        Assert.Equal(0.01, SpringStack.ForceAt([], 0.01).Gap);
    }

    [Fact]
    public void The_default_element_is_a_rigid_piece_of_no_thickness()
    {
        Assert.Equal(StackElement.Rigid(0), default);
        Assert.Equal(0, SpringStack.LengthAt([default], 100));
    }

    [Fact]
    public void A_progressive_spring_follows_its_table_and_goes_on_with_its_last_line()
    {
        var curve = SpringCurve.Through([0.02, 0.05], [400, 1600]);
        var spring = StackElement.Progressive(0.200, 0.100, curve);
        Assert.Equal(200, SpringStack.ForceAt([spring], 0.190).Force, 1e-9);
        Assert.Equal(800, SpringStack.ForceAt([spring], 0.170).Force, 1e-9);
        Assert.Equal(2400, SpringStack.ForceAt([spring], 0.130).Force, 1e-9);
        Assert.Equal(3600, spring.ClosingForce, 1e-9);
        Assert.Equal(20_000, SpringStack.TangentRateAt([spring], 399)!.Value, 1e-6);
        Assert.Equal(40_000, SpringStack.TangentRateAt([spring], 400)!.Value, 1e-6);
        Assert.True(curve.LastDeflection < spring.Travel);
    }

    [Fact]
    public void A_table_that_goes_past_the_solid_length_ends_there()
    {
        var spring = StackElement.Progressive(0.200, 0.170, SpringCurve.Through([0, 0.02, 0.05], [0, 400, 1600]));
        Assert.Equal(800, spring.ClosingForce, 1e-9);
        Assert.Equal(StackState.Bound, SpringStack.ForceAt([spring], 0.169).State);
        Assert.Equal(0.170, SpringStack.LengthAt([spring], 1500), 1e-15);
    }

    [Theory]
    [InlineData(new[] { 0.0, 0.01 }, new[] { 0.0 }, CurveFlawKind.LengthsDiffer, -1)]
    [InlineData(new[] { 0.0 }, new[] { 0.0 }, CurveFlawKind.TooFewPoints, -1)]
    [InlineData(new double[0], new double[0], CurveFlawKind.TooFewPoints, -1)]
    [InlineData(new[] { 0.0, double.NaN }, new[] { 0.0, 1 }, CurveFlawKind.NotFinite, 1)]
    [InlineData(new[] { -0.01, 0.01 }, new[] { 0.0, 1 }, CurveFlawKind.Negative, 0)]
    [InlineData(new[] { 0.0, 0.01, 0.01 }, new[] { 0.0, 1, 2 }, CurveFlawKind.NotIncreasing, 2)]
    [InlineData(new[] { 0.0, 0.01, 0.02 }, new[] { 0.0, 1, 1 }, CurveFlawKind.NotIncreasing, 2)]
    [InlineData(new[] { 0.0, 0.01 }, new[] { 5.0, 10 }, CurveFlawKind.NotIncreasing, 0)]
    public void A_flaw_of_a_table_is_named_with_its_row(double[] deflections, double[] forces, CurveFlawKind kind, int row)
    {
        Assert.Equal(new CurveFlaw(kind, row), SpringCurve.FlawOf(deflections, forces));
        Assert.Throws<ArgumentException>(() => SpringCurve.Through(deflections, forces));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-1)]
    public void A_force_that_is_no_compression_is_refused(double force)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringStack.LengthAt([Main], force));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringStack.TangentRateAt([Main], force));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringStack.IsClosed([Main], 0, force));
    }

    [Theory]
    [InlineData(double.NaN, 0.05, 1000)]
    [InlineData(0.1, double.NaN, 1000)]
    [InlineData(0.1, 0.05, double.NaN)]
    [InlineData(0.1, 0.1, 1000)]
    [InlineData(0.1, -0.01, 1000)]
    [InlineData(0.1, 0.05, 0)]
    [InlineData(double.PositiveInfinity, 0.05, 1000)]
    public void A_coil_that_cannot_be_is_refused(double free, double solid, double rate) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StackElement.Linear(free, solid, rate));

    [Fact]
    public void A_space_that_is_no_number_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringStack.ForceAt([Main], double.NaN));

    [Fact]
    public void Nothing_is_allocated()
    {
        StackElement[] stack = [Main, Helper, Sheet, StackElement.Progressive(0.1, 0.05, SpringCurve.Through([0.02, 0.05], [400, 1600]))];
        double sum = Exercise(stack);   // compiled before it is counted
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += Exercise(stack);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(sum > 0);
    }

    private static double Exercise(ReadOnlySpan<StackElement> stack)
    {
        double sum = 0;
        for (int i = 0; i < 100; i++)
        {
            double force = SpringStack.ForceAt(stack, 0.15 + (i * 0.002)).Force;
            sum += force + SpringStack.LengthAt(stack, force) + (SpringStack.TangentRateAt(stack, force) ?? 0);
        }

        return sum;
    }
}
