using Cornerwright.Garage.Chassis;
using Cornerwright.Web.Components;
using Cornerwright.Web.Components.Entry;

namespace Cornerwright.Web.Tests.Entry;

public sealed class FieldPathsTests
{
    [Theory]
    [InlineData("frontLeft/motion/springRatio", "/car/c/corner/front-left#at-frontLeft-motion-springRatio")]
    [InlineData("rearRight/obstacles/arch-lip/gaps/0/distance", "/car/c/corner/rear-right#at-rearRight-obstacles-arch-lip-gaps-0-distance")]
    [InlineData("parts/springs/f-8/rate", "/car/c/parts?kind=springs&part=f-8#at-parts-springs-f-8-rate")]
    [InlineData("builds/now/frontLeft/perchHeight", "/car/c/build/now#at-builds-now-frontLeft-perchHeight")]
    [InlineData("loadCases/driver/frontLeft", "/car/c#at-loadCases-driver-frontLeft")]
    public void A_path_of_the_document_leads_to_its_box(string path, string address) =>
        Assert.Equal(address, FieldPaths.Address("c", path));

    [Fact]
    public void Every_corner_has_a_slug_that_leads_back()
    {
        Assert.All(Places.Corners, place => Assert.Equal(place, Addresses.CornerOf(Addresses.Slug(place))));
        Assert.Null(Addresses.CornerOf("middle"));
    }

    [Theory]
    [InlineData("car/wag%20tail/parts?kind=springs", "wag tail")]
    [InlineData("car/w", "w")]
    [InlineData("", "")]
    [InlineData("export/w", "")]
    public void The_car_of_an_address(string path, string car) => Assert.Equal(car, Addresses.CarOf(path));

    [Fact]
    public void Made_ids_are_readable_and_free()
    {
        Assert.Equal("gravel-set-2", FreshId.FromName("Gravel set!", ["gravel-set"]));
        Assert.Equal("new", FreshId.FromName("…", []));
        Assert.Equal("case-2", FreshId.Beside("case", ["case-1"]));
    }
}
