using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Cli.Json;

/// <summary>What was learned, for scripts.</summary>
internal static class LearnedJson
{
    public static string Write(Car car, Learned learned, bool used) => JsonPage.Write("learned", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteBoolean("used", used);
        writer.Objects("readings", learned.Readings, r =>
        {
            writer.WriteString("occasion", r.Occasion);
            writer.WriteString("corner", r.Corner.Name());
            writer.WriteString("label", r.Label);
            writer.Measure("read", r.Read);
            writer.Measure("first", r.First);
            writer.Measure("firstDoubt", r.FirstDoubt);
            writer.Measure("expected", r.Expected);
            writer.Measure("doubt", r.Doubt);
            writer.Number("sigmas", Math.Round(r.Sigmas, 4));
            writer.WriteBoolean("setAside", r.SetAside);
        });
        writer.Objects("numbers", learned.Numbers, n =>
        {
            writer.WriteString("path", n.Path);
            writer.WriteString("label", n.Label);
            writer.Measure("before", n.Before);
            writer.Measure("beforeDoubt", n.BeforeDoubt);
            writer.Measure("after", n.After);
            writer.Measure("afterDoubt", n.AfterDoubt);
            writer.WriteBoolean("suspect", n.Suspect);
        });
        writer.Texts("unused", learned.Unused);
    });
}
