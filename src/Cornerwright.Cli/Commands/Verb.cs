using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Scanning;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

/// <summary>What every verb understands.</summary>
public class VerbSettings : CommandSettings
{
    [CommandOption("--json")]
    [Description("Print one JSON document and nothing else.")]
    public bool Json { get; init; }
}

/// <summary>Settings of a verb that works on a car file.</summary>
public class CarSettings : VerbSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("The car file.")]
    public string File { get; init; } = "";
}

/// <summary>Settings of a verb that judges, and so needs the points of the scans that a car names.</summary>
public class ScannedCarSettings : CarSettings
{
    [CommandOption("--scans <FOLDER>")]
    [Description("Where the files of the car's scans are; beside the car file, or in the folder scans there, if not given.")]
    public string? Scans { get; init; }

    [CommandOption("--no-scans")]
    [Description("Judge by the readings alone.")]
    public bool NoScans { get; init; }
}

/// <summary>What the verbs share: reading the car, refusing bad input with every problem at once.</summary>
public abstract class Verb<TSettings>(Surroundings around) : Command<TSettings>
    where TSettings : VerbSettings
{
    protected Surroundings Around { get; } = around;

    public sealed override int Execute(CommandContext context, TSettings settings, CancellationToken cancellationToken) => Act(settings);

    /// <returns>One of <see cref="ExitCode"/>.</returns>
    protected abstract int Act(TSettings settings);

    /// <summary>Problems for people on the error side; with --json also as the document.</summary>
    protected int Refuse(TSettings settings, IReadOnlyList<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ProblemText.Write(Around.Err, problems);
        if (settings.Json)
        {
            Around.Out.Document(ProblemJson.Write(problems));
        }

        return ExitCode.BadInput;
    }

    protected Checked<Car> ReadCar(string path) => TakeCar(path, out _);

    /// <summary>The car of a file that <see cref="PutBack"/> may write again.</summary>
    /// <param name="path">The car file.</param>
    /// <param name="asRead">The bytes that were read, by which a change meanwhile is noticed.</param>
    protected Checked<Car> TakeCar(string path, out ReadOnlyMemory<byte> asRead)
    {
        var bytes = Around.Files.Read(path);
        asRead = bytes.Ok ? bytes.Value : default;
        return bytes.Ok ? CarFile.Read(asRead) : Checked<Car>.Wrong(bytes.Problems);
    }

    /// <summary>The car's scans. One that cannot be read is a problem: it must not silently be left out of a verdict.</summary>
    protected Checked<ScanShelf> ScansOf(ScannedCarSettings settings, Car car)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var shelf = settings.NoScans ? ScanShelf.Empty : ScanFolder.ShelfOf(Around.Files, car, settings.File, settings.Scans);
        return shelf.Problems.Count > 0 ? Checked<ScanShelf>.Wrong(shelf.Problems) : Checked<ScanShelf>.From(shelf);
    }

    /// <summary>
    /// Writes a car back into the file it was read from, unless someone saved that file since. What is written has been read back
    /// first, so that no file is saved which could not be opened.
    /// </summary>
    protected Problem? PutBack(string path, Car car, ReadOnlyMemory<byte> asRead)
    {
        string text = CarFile.Write(car);
        if (CarFile.Read(text) is { Ok: false } broken)
        {
            return broken.Problems[0];
        }

        return Around.Files.Read(path) is { Ok: true } now && now.Value.Span.SequenceEqual(asRead.Span)
            ? Around.Files.WriteOver(path, text)
            : new Problem(
                "file", path, "a file that nobody else saves meanwhile",
                "It was changed while this ran, and is left as it is now: run the command again.");
    }

    /// <summary>Writes a file of our own making: a new one, or over an old one where that was asked for.</summary>
    /// <param name="path">Where.</param>
    /// <param name="text">All of it.</param>
    /// <param name="over">Whether a file that is there may be replaced.</param>
    protected Problem? WriteOwn(string path, string text, bool over) => over ? Around.Files.WriteOver(path, text)
        : Around.Files.Exists(path)
            ? new Problem("file", path, "the name of a new file", "Choose another name, or add --force to write over it.")
        : Around.Files.WriteNew(path, text);
}
