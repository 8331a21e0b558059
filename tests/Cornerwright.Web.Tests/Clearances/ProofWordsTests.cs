using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Clearances;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Web.Tests.Clearances;

/// <summary>An interval in words is never narrower than the interval.</summary>
public class ProofWordsTests
{
    private static readonly NearThing Arch = new("arch", "arch lip", true, NearKind.Tape, 0.005, 0.004);

    private static string Words(double lower, double upper, CertifyingStop why = CertifyingStop.Closed) =>
        ProofWords.Of(new LeastGap(lower, upper, new(0.068, -0.175, 0), Arch, why));

    [Fact]
    public void Ends_are_rounded_outward()
    {
        Assert.StartsWith("The least gap to the body is at least 6.3 mm and at most 6.4 mm, proved", Words(0.00631, 0.00635),
            StringComparison.Ordinal);
        Assert.Contains("at least 6.2 mm and at most 6.4 mm", Words(0.00629, 0.00631), StringComparison.Ordinal);
        Assert.Contains("arch lip, at travel +68 mm, steered 10° to the right", Words(0.00631, 0.00635), StringComparison.Ordinal);
    }

    [Fact]
    public void On_one_axle_the_other_wheel_is_told() =>
        Assert.Contains("arch lip, at travel +68 mm, straight ahead, other wheel at −76 mm",
            ProofWords.Of(new LeastGap(0.004, 0.0041, new(0.068, 0, -0.076), Arch, CertifyingStop.Closed), paired: true),
            StringComparison.Ordinal);

    [Fact]
    public void An_overlap_is_told_as_one() =>
        Assert.Contains("overlap by at least 16.7 mm and at most 16.9 mm", Words(-0.01681, -0.01679), StringComparison.Ordinal);

    [Fact]
    public void What_is_not_proved_is_not_said_to_be()
    {
        Assert.Contains("was not followed", Words(-0.09, -0.03, CertifyingStop.DeepOverlap), StringComparison.Ordinal);
        Assert.Contains("overlap by at least 30.0 mm", Words(-0.09, -0.03, CertifyingStop.DeepOverlap), StringComparison.Ordinal);
        Assert.Contains("could not be proved", Words(double.NegativeInfinity, 0.004, CertifyingStop.NotSmooth), StringComparison.Ordinal);
        Assert.Contains("between 3.0 mm and 4.0 mm", Words(0.003, 0.004, CertifyingStop.CellLimit), StringComparison.Ordinal);
        Assert.Equal("Nothing of the body is known near this wheel.", ProofWords.Of(null));
    }

    [Theory]
    [InlineData(0, "straight ahead")]
    [InlineData(0.61, "steered 35° to the left")]
    [InlineData(double.NaN, "straight ahead")]
    public void Steering_is_told_by_its_side(double steer, string words) => Assert.Equal(words, SteerWords.Of(steer));

    [Theory]
    [InlineData(12.0, "12 o'clock")]
    [InlineData(11.74, "11:45 o'clock")]
    [InlineData(0.02, "12 o'clock")]
    public void Clock_positions_go_by_quarters(double hours, string words) => Assert.Equal(words, SteerWords.Clock(hours));
}
