using Cornerwright.Cli.Text;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Cli.Json;

/// <summary>Spring stacks in every state for scripts; lengths in metres, forces in newtons, pieces from the perch upward.</summary>
internal static class StackJson
{
    public static string Write(Judgement judgement, IEnumerable<CornerPicture> pictures) => JsonPage.Write("stacks", writer =>
    {
        writer.WriteString("car", judgement.Car.Id);
        writer.WriteString("build", judgement.Build.Id);
        writer.Objects("corners", pictures, picture =>
        {
            writer.WriteString("corner", picture.Corner.Name());
            writer.Objects("states", picture.Stack, state =>
            {
                writer.WriteString("state", state.State);
                writer.Number("travel", state.Travel);
                writer.Number("space", state.Space);
                writer.Number("gap", state.Gap);
                writer.Number("force", state.Force);
                writer.Number("rodShowing", state.RodShowing);
                writer.Objects("pieces", state.Pieces, piece =>
                {
                    writer.WriteString("name", piece.Name);
                    writer.WriteBoolean("coil", piece.Coil);
                    writer.WriteBoolean("shut", piece.Shut);
                    writer.Number("length", piece.Length);
                    writer.Number("freeLength", piece.FreeLength);
                    writer.Number("solidLength", piece.SolidLength);
                    writer.Number("outerDiameter", piece.Outer);
                });
            });
        });
    });
}
