using System.ComponentModel;
using System.Security.Cryptography;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Scans;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class ScanInfoSettings : VerbSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("A scan: PLY, OBJ, STL or GLB.")]
    public string File { get; init; } = "";
}

/// <summary>Says what a scan's file holds, and how large it would be in each unit.</summary>
public sealed class ScanInfoCommand(Surroundings around) : Verb<ScanInfoSettings>(around)
{
    protected override int Act(ScanInfoSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var file = Around.Files.Open(settings.File);
        if (!file.Try(out var stream))
        {
            return Refuse(settings, file.Problems);
        }

        using (stream)
        {
            string hash = Convert.ToHexStringLower(SHA256.HashData(stream));
            stream.Position = 0;
            var read = ScanFile.Read(stream, settings.File, new Tenths(Around));
            if (!read.Try(out var scan))
            {
                return Refuse(settings, read.Problems);
            }

            if (settings.Json)
            {
                Around.Out.Document(ScanJson.Write(scan, hash));
            }
            else
            {
                ScanText.Write(Around.Out, Path.GetFileName(settings.File), scan, hash);
            }

            return ExitCode.Holds;
        }
    }

    /// <summary>Progress for a person at a terminal, silent in a pipe.</summary>
    private sealed class Tenths(Surroundings around) : IProgress<double>
    {
        private int _told;

        public void Report(double value)
        {
            int tenth = (int)(value * 10);
            if (tenth > _told && around.Err.Profile.Out.IsTerminal)
            {
                _told = tenth;
                around.Err.Line(FormattableString.Invariant($"read {tenth * 10} %"));
            }
        }
    }
}
