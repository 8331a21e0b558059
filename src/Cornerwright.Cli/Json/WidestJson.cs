using Cornerwright.Cli.Text;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Cli.Json;

/// <summary>Room and sizes for scripts; lengths in metres, offsets in millimetres as they are cast on wheels.</summary>
internal static class WidestJson
{
    public static string Write(Car car, Build build, IEnumerable<(CornerPlace Place, WidestAnswer Answer)> answers) =>
        JsonPage.Write("widest", writer =>
    {
        writer.WriteString("car", car.Id);
        writer.WriteString("build", build.Id);
        writer.Objects("corners", answers, answer =>
        {
            writer.WriteString("corner", answer.Place.Name());
            writer.List("missing", answer.Answer.Missing, writer.WriteStringValue);
            writer.Number("doubt", answer.Answer.Doubt);
            writer.Objects("sizes", answer.Answer.Sizes, size =>
            {
                writer.WriteString("size", size.Size);
                writer.Number("rimDiameterCode", size.RimCode);
                writer.Number("rimWidthCode", size.RimWidthCode);
                writer.WriteNumber("leastOffsetMm", size.LeastOffsetMm);
                writer.WriteNumber("mostOffsetMm", size.MostOffsetMm);
                writer.Number("outerDiameter", size.OuterDiameter);
                writer.Number("rollsMore", size.Rolls);
            });
            writer.Objects("room", answer.Answer.Envelope, point =>
            {
                writer.Number("a", point.A);
                writer.Number("r", point.R);
            });
        });
    });
}
