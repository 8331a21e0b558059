using Spectre.Console;

namespace Cornerwright.Cli.Edges;

/// <summary>Everything outside the program that a verb may touch.</summary>
/// <param name="Out">Answers; with --json nothing but the document.</param>
/// <param name="Err">Problems and progress.</param>
public sealed record Surroundings(IAnsiConsole Out, IAnsiConsole Err, IFiles Files, IApp App);
