namespace Cornerwright.Storage.Rows;

/// <summary>Says that a revision changed a build, so that one build's history needs no document.</summary>
public sealed class ChangedBuildRow
{
    public required string CarId { get; set; }

    public int Number { get; set; }

    public required string BuildId { get; set; }
}
