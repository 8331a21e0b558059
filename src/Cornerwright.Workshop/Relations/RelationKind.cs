namespace Cornerwright.Workshop.Relations;

/// <summary>One kind of relation between numbers.</summary>
/// <param name="Id">In files and scripts.</param>
/// <param name="Sentence">What must go together, for people.</param>
/// <param name="Source">Where the expected value or its band comes from.</param>
public sealed record RelationKind(string Id, string Sentence, string Source)
{
    internal const string Practice = "common practice, no source";
}
