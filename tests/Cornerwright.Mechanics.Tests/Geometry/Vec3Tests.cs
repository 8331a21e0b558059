using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Geometry;

public class Vec3Tests
{
    [Fact]
    public void A_quarter_turn_about_Z_carries_X_to_Y()
    {
        Vec3 turned = Vec3.UnitX.RotatedAbout(Vec3.UnitZ, Math.PI / 2);
        Assert.Equal(0, (turned - Vec3.UnitY).Length, 1e-15);
    }

    [Fact]
    public void Turning_keeps_lengths_and_the_component_along_the_axis()
    {
        var random = new Random(11);
        for (int i = 0; i < 200; i++)
        {
            Vec3 axis = new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() + 0.1).Unit();
            Vec3 p = new(random.NextDouble(), random.NextDouble(), random.NextDouble());
            Vec3 q = p.RotatedAbout(axis, 7 * random.NextDouble());
            Assert.Equal(p.Length, q.Length, 1e-14);
            Assert.Equal(p.Dot(axis), q.Dot(axis), 1e-14);
        }
    }

    [Fact]
    public void Planar_cross_is_positive_from_outboard_to_up()
    {
        Assert.Equal(1, new PlanarPoint(1, 0).Cross(new(0, 1)));
        Assert.Equal(5, new PlanarPoint(3, 4).Length);
        Assert.Equal(11, new PlanarPoint(1, 2).Dot(new(3, 4)));
    }
}
