using Cornerwright.Garage.Cars;
using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Hosting;

/// <summary>What lies in a garage that has never been used.</summary>
public static class FirstCar
{
    public static async Task Place(ICarKeeper keeper)
    {
        ArgumentNullException.ThrowIfNull(keeper);
        if ((await keeper.List()).Count == 0)
        {
            await keeper.Save(new Car { Id = "first", Name = "First car", Builds = [new() { Id = "as-found", Name = "As found" }] }, 0);
        }
    }
}
