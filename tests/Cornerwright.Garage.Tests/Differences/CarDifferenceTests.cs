using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Differences;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Tests.Files;

namespace Cornerwright.Garage.Tests.Differences;

public sealed class CarDifferenceTests
{
    private static readonly Car Small = CarFile.Read(SmallCar.Text).Value;

    [Fact]
    public void A_changed_setting_is_told_by_place_before_and_after()
    {
        var after = Small.With(
            Small.Builds[0] with { FrontLeft = Small.Builds[0].FrontLeft with { PerchHeight = Reading.Of("318 mm", Dimension.Length) } });
        var change = Assert.Single(CarDifference.Between(Small, after));
        Assert.Equal(new FieldChange(ChangeKind.Changed, "builds/street/frontLeft/perchHeight",
            "Builds / Street / Front left / Perch height", "312 mm", "318 mm"), change);
        Assert.Equal("street", change.BuildId);
        Assert.Equal("Builds / Street / Front left / Perch height: 312 mm → 318 mm", change.ToString());
    }

    [Fact]
    public void A_changed_tolerance_source_or_date_shows_the_whole_reading()
    {
        var after = Small with { Wheelbase = Reading.Parse("", Dimension.Length, "2480 mm", "4 mm").Value };
        Assert.Equal("Wheelbase: 2480 mm ±5 mm at most (tape, 2026-05-01) → 2480 mm ±4 mm (tape)",
            Assert.Single(CarDifference.Between(Small, after)).ToString());
        Assert.Equal("Wheelbase: emptied (was 2480 mm ±5 mm at most (tape, 2026-05-01))",
            Assert.Single(CarDifference.Between(Small, Small with { Wheelbase = null })).ToString());
        Assert.Equal("Ground clearance: 120 mm (setting)", Assert.Single(
            CarDifference.Between(Small, Small with { GroundClearance = Reading.Of("120 mm", Dimension.Length) })).ToString());
    }

    [Fact]
    public void Items_are_matched_by_id_wherever_they_stand()
    {
        Wheel winter = new() { Id = "w/17~", Name = "Winter", Designation = "7Jx17 ET40 5x112" };
        var two = Small with { Parts = Small.Parts with { Wheels = [.. Small.Parts.Wheels, winter] } };
        Assert.Equal("Parts / Wheels / Winter: added", Assert.Single(CarDifference.Between(Small, two)).ToString());
        Assert.Equal("parts/wheels/w~117~0", CarDifference.Between(Small, two)[0].Address);
        Assert.Equal("Parts / Wheels / Winter: taken out", Assert.Single(CarDifference.Between(two, Small)).ToString());
        var turned = two with { Parts = two.Parts with { Wheels = [winter with { Price = 99.5m }, .. Small.Parts.Wheels] } };
        Assert.Equal(
            ["Parts / Wheels / Winter / Price each: 99.5", "Parts / Wheels: put in another order"],
            CarDifference.Between(two, turned).Select(x => x.ToString()));
    }

    [Fact]
    public void Rows_without_ids_are_matched_by_their_place()
    {
        var spring = Small.Parts.Springs[0];
        SpringCurvePoint more = new() { Deflection = Reading.Of("20 mm", Dimension.Length), Force = Reading.Of("1300 N", Dimension.Force) };
        var after = Small with { Parts = Small.Parts
            with { Springs = [spring with { Curve = [spring.Curve[0] with { Force = Reading.Of("610 N", Dimension.Force) }, more] }] } };
        Assert.Equal(
            ["Parts / Springs / Sixty / Force curve 1 / Force: 600 N → 610 N", "Parts / Springs / Sixty / Force curve 2: added"],
            CarDifference.Between(Small, after).Select(x => x.ToString()));
    }

    [Fact]
    public void Choices_and_flags_read_as_words()
    {
        var after = Small with { Front = Small.Front with { Layout = SpringLayout.Apart, Driven = true } };
        Assert.Equal(["Front axle / Springs: coilover → apart", "Front axle / Driven: no → yes"],
            CarDifference.Between(Small, after).Select(x => x.ToString()));
    }

    [Fact]
    public void Two_builds_compare_alone()
    {
        var other = Small.Builds[0] with { Id = "track", FrontLeft = Small.Builds[0].FrontLeft with { Stack = ["s60, soft"] } };
        Assert.Equal(["Id: street → track", "Front left / Stack, from the perch upward: s60 → s60, soft"],
            CarDifference.Between(Small.Builds[0], other).Select(x => x.ToString()));
        var split = other with { FrontLeft = other.FrontLeft with { Stack = ["s60", "soft"] } };
        Assert.Single(CarDifference.Between(other, split));
    }

    [Fact]
    public void Ids_that_stand_twice_do_not_stop_it()
    {
        Build b = new() { Id = "x", Name = "X" };
        var before = Small with { Builds = [b, b with { Name = "Y" }] };
        Assert.Equal("Builds 2 / Name: Y → Z",
            Assert.Single(CarDifference.Between(before, Small with { Builds = [b, b with { Name = "Z" }] })).ToString());
    }

    [Fact]
    public void No_difference_exactly_when_the_documents_are_the_same()
    {
        for (int seed = 1; seed < 60; seed++)
        {
            var (a, b) = (new RandomRecords(seed).Car(), new RandomRecords(seed + 1).Car());
            Assert.Empty(CarDifference.Between(a, new RandomRecords(seed).Car()));
            Assert.NotEmpty(CarDifference.Between(a, b));
            Assert.Equal(CarDifference.Between(a, b).Count,
                CarDifference.Between(a, b).Select(x => (x.Address, x.Kind)).Distinct().Count());
        }
    }

    [Fact]
    public void Many_changes_make_one_line()
    {
        Assert.Equal("No change", ChangeSentence.Of([]));
        var after = Small with { Name = "Dune two", Note = "new\noil", Currency = "EUR", Wheelbase = null };
        Assert.Equal("Name: Dune → Dune two; Note: new oil; and 2 more changes", ChangeSentence.Of(CarDifference.Between(Small, after)));
    }
}
