using Cornerwright.Cli.Text;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Sweeps;

namespace Cornerwright.Cli.Json;

/// <summary>A sweep for scripts: the columns with their units, then a row a pose, null for what is not known.</summary>
internal static class SweepJson
{
    public static string Write(Car car, Build build, IReadOnlyList<SweepRow> rows) => JsonPage.Write("sweep", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("build", build.Id);
        writer.Objects("columns", SweepColumns.All, column =>
        {
            writer.WriteString("name", column.Name);
            writer.WriteString("unit", column.Unit.Symbol);
        });
        writer.Objects("rows", rows, row =>
        {
            writer.WriteString("corner", row.Corner.Name());
            foreach (var column in SweepColumns.All)
            {
                writer.Number(column.Name, column.Written(row));
            }

            writer.Text("not_reached", row.Why.Length > 0 ? row.Why : null);
        });
    });
}
