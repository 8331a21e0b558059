using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Entry;

namespace Cornerwright.Web.Tests.Entry;

public sealed class ReadingDraftTests
{
    private static readonly FieldShape Height = RecordShape.Of<Corner>().ByName["rideHeight"];
    private static readonly FieldShape Camber = RecordShape.Of<Corner>().ByName["camber"];

    private static ReadingDraft Typed(string value, string tolerance = "", ReadingSource source = ReadingSource.Tape) =>
        new() { Value = value, Tolerance = tolerance, Source = source };

    [Theory]
    [InlineData("341", "341 mm")]
    [InlineData(" 341.5 ", "341.5 mm")]
    public void A_bare_number_gets_the_unit_beside_the_field_and_shows_it(string typed, string kept) =>
        Assert.Equal(kept, Typed(typed).Read(Height, "ride height").Value.Typed);

    [Theory]
    [InlineData("13 3/8 in")]
    [InlineData("1' 1\"")]
    [InlineData("341mm")]
    public void What_was_typed_with_its_unit_stays_as_it_was(string typed) =>
        Assert.Equal(typed, Typed(typed).Read(Height, "ride height").Value.Typed);

    [Fact]
    public void The_number_used_is_shown_in_the_fields_unit_with_its_doubt()
    {
        var reading = Typed("13 3/8 in", "2").Read(Height, "ride height").Value;

        // 13.375 in × 25.4 mm/in (exact by definition, NIST SP 811) = 339.725 mm.
        Assert.Equal("339.725 mm ± 2 mm", ReadingDraft.Used(Height, reading));
        Assert.False(reading.ToleranceAssumed);
    }

    [Fact]
    public void A_tolerance_nobody_typed_is_shown_and_is_known_to_be_assumed()
    {
        var reading = Typed("341 mm").Read(Height, "ride height").Value;
        Assert.True(reading.ToleranceAssumed);
        Assert.Equal("341 mm ± 2 mm", ReadingDraft.Used(Height, reading));
    }

    [Fact]
    public void Degrees_stand_at_the_number() =>
        Assert.Equal("-1.5° ± 0.2°", ReadingDraft.Used(Camber, Typed("-1°30'", source: ReadingSource.Gauge).Read(Camber, "camber").Value));

    [Theory]
    [InlineData("1341 mm", "150 to 800 mm")]
    [InlineData("341 kg", "mm")]
    [InlineData("tall", "mm")]
    public void A_wrong_value_names_field_value_allowed_and_mend(string typed, string allowed)
    {
        var problem = Assert.Single(Typed(typed).Read(Height, "front left corner / hub centre to arch edge").Problems);
        Assert.Equal("front left corner / hub centre to arch edge", problem.Field);
        Assert.Equal(typed, problem.Given);
        Assert.Contains(allowed, problem.Allowed, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Cure);
    }

    [Fact]
    public void A_bare_number_out_of_range_says_how_its_unit_was_taken()
    {
        var problem = Assert.Single(Typed("14 1/2").Read(Height, "ride height").Problems);
        Assert.Equal("14 1/2", problem.Given);
        Assert.Contains("taken as 14 1/2 mm", problem.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void Problems_of_value_and_tolerance_come_at_once() =>
        Assert.Equal(2, Typed("tall", "-2 mm").Read(Height, "ride height").Problems.Count);

    [Fact]
    public void A_draft_of_a_reading_reads_back_as_that_reading()
    {
        var reading = Reading.Parse("x", Height.Words.Dimension, "13 3/8 in", "±0.5 mm", ToleranceKind.HalfRange, ReadingSource.Calliper,
            new DateOnly(2026, 5, 31)).Value;
        Assert.Equal(reading, ReadingDraft.Of(reading, ReadingSource.Tape).Read(Height, "x").Value);
    }
}
