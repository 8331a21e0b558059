namespace Cornerwright.Cli.Json;

/// <summary>Where the app answers, for scripts.</summary>
internal static class AddressJson
{
    public static string Write(IReadOnlyList<string> addresses) => JsonPage.Write("app", writer => writer.Texts("addresses", addresses));
}
