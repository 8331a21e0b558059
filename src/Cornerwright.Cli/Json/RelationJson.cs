using System.Text.Json;
using Cornerwright.Workshop.Relations;

namespace Cornerwright.Cli.Json;

/// <summary>Numbers that do not go together, for scripts.</summary>
internal static class RelationJson
{
    /// <summary>Two fields of the document: how many were looked at, and each that is not fine.</summary>
    public static void Fields(Utf8JsonWriter writer, CarRelations relations)
    {
        writer.WriteNumber("relationsLookedAt", relations.Looked);
        writer.Objects("relations", relations.Found, relation =>
        {
            writer.WriteString("relation", relation.Id);
            writer.WriteString("band", relation.Band == Band.CannotBe ? "cannotBe" : "surprising");
            writer.WriteString("sentence", relation.Sentence);
            writer.Objects("numbers", relation.Ties, tie =>
            {
                writer.WriteString("path", tie.Path);
                writer.WriteString("label", tie.Label);
                writer.WriteString("typed", tie.Typed);
            });
            writer.Text("confirmed", relation.IsConfirmed ? relation.Why : null);
        });
    }
}
