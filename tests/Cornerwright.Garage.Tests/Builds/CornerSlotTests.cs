using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Builds;

public sealed class CornerSlotTests
{
    [Fact]
    public void Every_field_of_a_corner_is_a_slot_and_every_kind_of_part_has_one()
    {
        Assert.Equal(RecordShape.Of<CornerBuild>().Fields, CornerSlot.All.Select(s => s.Field));
        Assert.Equal(PartKind.All.OrderBy(k => k.Name), CornerSlot.All.SelectMany(s => s.Kinds).OrderBy(k => k.Name));
        Assert.All(CornerSlot.All, s => Assert.Equal(s.HoldsParts, s.About.Group != SlotGroup.Setting));
    }

    [Fact]
    public void A_component_is_the_part_whose_role_it_has()
    {
        Assert.Null(CornerSlot.Of(BuildRole.None));
        foreach (var role in Enum.GetValues<BuildRole>().Where(r => r != BuildRole.None))
        {
            Assert.Equal(role.ToString(), CornerSlot.Of(role)!.Field.PropertyName);
        }

        Assert.Equal(["BodyHeight", "ClampCamber"], CornerSlot.SettingsOf(BuildRole.Damper).Select(s => s.Field.PropertyName));
        Assert.Empty(CornerSlot.SettingsOf(BuildRole.None));
    }

    [Fact]
    public void What_moves_the_car_up_or_down_is_said_of_every_slot() => Assert.Equal(
        ["Stack", "Perch", "TopMount", "Damper", "PerchHeight", "BodyHeight"],
        CornerSlot.All.Where(s => s.About.MovesHeight).Select(s => s.Field.PropertyName));

    [Fact]
    public void Parts_are_found_on_the_shelves_of_their_slot_alone()
    {
        var shelf = new PartsShelf
        {
            Springs = [new() { Id = "a", Name = "Spring a" }], Sheets = [new() { Id = "b", Name = "Sheet b" }],
            Spacers = [new() { Id = "a", Name = "Spacer a" }],
        };
        var corner = new CornerBuild { Stack = ["b", "a", "gone"], Spacer = "a" };
        var stack = CornerSlot.Named(nameof(CornerBuild.Stack));
        Assert.Equal("Sheet b + Spring a + gone", stack.Written(shelf, corner));
        Assert.Equal(["Sheet b", "Spring a"], stack.Parts(shelf, corner).Select(p => p.Name));
        Assert.True(stack.Holds(corner, PartKind.Of<Spring>(), "a"));
        Assert.False(stack.Holds(corner, PartKind.Of<Spacer>(), "a"));
        Assert.Equal("Spacer a", CornerSlot.Named(nameof(CornerBuild.Spacer)).Written(shelf, corner));
        Assert.Equal("", CornerSlot.Named(nameof(CornerBuild.Wheel)).Written(shelf, corner));
        Assert.Equal([PartKind.Of<Spring>(), PartKind.Of<Sheet>()], CornerSlot.SharingIds(PartKind.Of<Sheet>()));
    }

    [Fact]
    public void A_setting_is_the_same_however_it_was_typed()
    {
        var perch = CornerSlot.Named(nameof(CornerBuild.PerchHeight));
        Assert.True(perch.Same(Set("254 mm"), Set("10 in")));
        Assert.False(perch.Same(Set("254 mm"), Set("254.1 mm")));
        Assert.False(perch.Same(Set("254 mm"), new CornerBuild()));
        Assert.True(perch.Same(new CornerBuild(), new CornerBuild()));

        static CornerBuild Set(string typed) => new() { PerchHeight = Reading.Of(typed, Dimension.Length) };
    }

    [Fact]
    public void A_part_that_contradicts_itself_is_named_in_the_trades_words()
    {
        var shelf = new PartsShelf
        {
            BumpStops = [new() { Id = "s", SpentLength = Long("40 mm"), Length = Long("30 mm") }],
            Wheels = [new() { Id = "w", Designation = "8Jx18 ET35 5x112" }, new() { Id = "w", Designation = "8Jx18 ET35 5x112" }],
            Springs = [new() { Id = "x" }], Sheets = [new() { Id = "x" }],
        };
        Assert.Equal(["wheels / id", "springs and sheets / id", "bump stop s / spent and free length"],
            Consistency.Check(shelf).Select(p => p.Field));

        static Reading Long(string typed) => Reading.Of(typed, Dimension.Length);
    }
}
