using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Tests.Benches;

public sealed class ShelfTests
{
    private static readonly Car Demo = DemoCar.Read();

    [Fact]
    public void Every_part_of_every_build_has_users()
    {
        var springs = Shelf.Kind("springs")!;
        foreach (var build in Demo.Builds)
        {
            foreach (string id in Places.Corners.SelectMany(c => build.At(c).Stack).Where(id => Demo.Parts.Springs.Any(s => s.Id == id)))
            {
                Assert.Contains(build.Name, Shelf.UsersOf(Demo, springs, id));
            }
        }
    }

    [Fact]
    public void Putting_and_removing_a_part_leaves_the_document_as_it_was()
    {
        var kind = Shelf.Kind("wheels")!;
        var copy = Shelf.Copy(Demo.Parts.Wheels[0], "w-copy", "Copy");
        var with = Shelf.Put(Demo, kind, copy);
        Assert.Equal(Demo.Parts.Wheels.Count + 1, with.Parts.Wheels.Count);
        Assert.Equal(CarFile.Write(Demo), CarFile.Write(Shelf.Remove(with, kind, "w-copy")));
    }

    [Fact]
    public void Springs_and_sheets_share_their_ids()
    {
        var taken = Shelf.TakenIds(Demo, Shelf.Kind("springs")!).ToList();
        Assert.Contains(Demo.Parts.Sheets[0].Id, taken);
        Assert.Contains(Demo.Parts.Springs[0].Id, taken);
    }

    [Fact]
    public void A_duplicate_build_is_the_same_under_its_own_name_and_the_measured_build_stays()
    {
        string id = Demo.Builds[0].Id;
        var car = BuildsOf.Duplicate(Demo, id, "twin", BuildsOf.CopyName(Demo, Demo.Builds[0].Name));
        Assert.Equal("Copy of " + Demo.Builds[0].Name, car.Build("twin")!.Name);
        Assert.Same(Demo.Builds[0].FrontLeft, car.Build("twin")!.FrontLeft);
        Assert.Same(car, BuildsOf.Remove(car, car.MeasuredBuild));
        Assert.True(CarFile.Read(CarFile.Write(car)).Ok);
    }
}
