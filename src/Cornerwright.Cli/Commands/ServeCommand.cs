using System.ComponentModel;
using System.Globalization;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Problems;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

public sealed class ServeSettings : VerbSettings
{
    /// <summary>The highest number a port can have. Source: RFC 9293, 16 bits.</summary>
    internal const int LastPort = 65535;

    [CommandOption("--port <NUMBER>")]
    [Description("Port to answer on; 5210 if not given, 0 for any free one.")]
    public int Port { get; init; } = 5210;

    [CommandOption("--network")]
    [Description("Answer the whole network, not only this machine. There is no sign-in: only where you trust everyone.")]
    public bool Network { get; init; }

    [CommandOption("--name <NAME>")]
    [Description("A further name or address by which browsers may call this app, as garage.example. May be repeated.")]
    public string[] Names { get; init; } = [];

    [CommandOption("--database <FILE>")]
    [Description("Where cars are kept; a file of your own among your application data if not given.")]
    public string? Database { get; init; }

    [CommandOption("--demo")]
    [Description("Keep everything in a database apart that begins with the demo car.")]
    public bool Demo { get; init; }
}

/// <summary>Starts the app and prints where it answers. Returns when it is stopped.</summary>
public sealed class ServeCommand(Surroundings around) : Verb<ServeSettings>(around)
{
    protected override int Act(ServeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Port is < 0 or > ServeSettings.LastPort)
        {
            return Refuse(settings, [new Problem("--port", settings.Port.ToString(CultureInfo.InvariantCulture),
                $"0 to {ServeSettings.LastPort}", "Choose another port.")]);
        }

        if (settings.Demo && settings.Database is not null)
        {
            return Refuse(settings, [new Problem("--database", settings.Database, "either --demo or --database",
                "The demo has a database of its own: take one of the two out.")]);
        }

        string host = settings.Network ? "0.0.0.0" : "127.0.0.1";
        List<string> args = ["--urls", FormattableString.Invariant($"http://{host}:{settings.Port}")];
        if (settings.Network)
        {
            args.AddRange(["--answer-network", "true"]);
        }

        if (settings.Names.Length > 0)
        {
            args.AddRange(["--answer-names", string.Join(',', settings.Names)]);
        }

        string? database = settings.Demo ? Around.App.DemoDatabase : settings.Database;
        if (database is not null)
        {
            args.AddRange(["--database", database]);
        }

        var problem = Around.App.Run(args, addresses => Announce(settings, addresses));
        return problem is null ? ExitCode.Holds : Refuse(settings, [problem]);
    }

    private void Announce(ServeSettings settings, IReadOnlyList<string> addresses)
    {
        if (settings.Json)
        {
            Around.Out.Document(AddressJson.Write(addresses));
            return;
        }

        foreach (string address in addresses)
        {
            Around.Out.Line($"Cornerwright answers at {address}");
        }

        Around.Err.Line("Stop it with Ctrl+C.");
    }
}
