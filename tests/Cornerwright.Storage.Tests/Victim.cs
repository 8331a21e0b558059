using System.Diagnostics;
using System.Globalization;
using Cornerwright.Storage.KillVictim;

namespace Cornerwright.Storage.Tests;

/// <summary>What a victim printed after a save had returned.</summary>
public sealed record Acknowledged(bool OnPurpose, RevisionMark Mark, int Step);

/// <summary>A process that saves without end, until it is killed.</summary>
public sealed class Victim : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Process _process;
    private readonly ManualResetEventSlim _ready = new();
    private readonly ManualResetEventSlim _saving = new();
    private readonly List<string> _lines = [];
    private readonly Task _reader;

    public Victim(string databasePath)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add(typeof(VictimCar).Assembly.Location);
        start.ArgumentList.Add(databasePath);
        _process = Process.Start(start)!;
        _reader = Task.Run(ReadAll);
    }

    /// <summary>Lets it save until its first acknowledgement and a little longer, kills it, and returns all it had acknowledged.</summary>
    public IReadOnlyList<Acknowledged> KillWhileSaving(TimeSpan after)
    {
        WaitUntilReady();
        _process.StandardInput.WriteLine("go");
        _process.StandardInput.Flush();
        Assert.True(_saving.Wait(Patience), "The victim did not save.");
        Thread.Sleep(after);
        Kill();
        return [.. _lines.Skip(1).Select(Parse)];
    }

    public void WaitUntilReady() => Assert.True(_ready.Wait(Patience), "The victim did not start.");

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
        _reader.Wait(Patience);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
        _ready.Dispose();
        _saving.Dispose();
    }

    /// <summary>A line counts only with its end: what was cut off had not been acknowledged.</summary>
    private void ReadAll()
    {
        var rest = "";
        var room = new char[4096];
        for (int got = _process.StandardOutput.Read(room); got > 0; got = _process.StandardOutput.Read(room))
        {
            string[] pieces = (rest + new string(room, 0, got)).Split('\n');
            _lines.AddRange(pieces[..^1]);
            rest = pieces[^1];
            if (_lines.Count > 0)
            {
                _ready.Set();
            }

            if (_lines.Count > 1)
            {
                _saving.Set();
            }
        }
    }

    private static Acknowledged Parse(string line)
    {
        string[] words = line.Trim().Split(' ');
        int[] numbers = [.. words.Skip(1).Select(x => int.Parse(x, CultureInfo.InvariantCulture))];
        return new(words[0] == "saved", new RevisionMark(numbers[0], numbers[1]), numbers[2]);
    }
}
