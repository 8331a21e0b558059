using System.Diagnostics;

namespace Cornerwright.Browser.Tests;

/// <summary>Finds the browser the tests drive: none is downloaded, and without one the tests fail and say what to type.</summary>
internal static class Chromium
{
    /// <summary>
    /// Quiet, without a sandbox (tests run as root in containers), never
    /// calling home, and drawing three dimensions without a graphics card.
    /// </summary>
    public static IReadOnlyList<string> Arguments { get; } =
        ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync", "--disable-dev-shm-usage",
         "--use-angle=swiftshader", "--enable-unsafe-swiftshader"];

    private static readonly string[] UsualPlaces =
        ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/snap/bin/chromium"];

    /// <returns>Path of the program; null to let Playwright use the one it has installed itself.</returns>
    /// <exception cref="InvalidOperationException">There is none; the message holds the command that installs one.</exception>
    public static string? Find(string ownPath)
    {
        if (Environment.GetEnvironmentVariable("CHROMIUM_PATH") is { Length: > 0 } given)
        {
            return File.Exists(given) ? given : throw new InvalidOperationException(
                $"CHROMIUM_PATH names \"{given}\", and there is no such file. Set it to the browser's program, or clear it.");
        }

        if (UsualPlaces.FirstOrDefault(File.Exists) is { } found)
        {
            return found;
        }

        if (File.Exists(ownPath))
        {
            return null;
        }

        throw new InvalidOperationException(
            "The browser tests need Chromium and found none. Type ./test, which installs it where it may and otherwise says how;"
            + " or set CHROMIUM_PATH to a Chromium or Chrome program. Looked at: " + string.Join(", ", UsualPlaces) + ", " + ownPath);
    }

    /// <summary>Pages of a PDF, counted by its page objects.</summary>
    public static int PagesOf(byte[] pdf)
    {
        string text = System.Text.Encoding.Latin1.GetString(pdf);
        int count = System.Text.RegularExpressions.Regex.Count(text, @"/Type\s*/Page[^s]");
        Debug.WriteLine(count);
        return count;
    }
}
