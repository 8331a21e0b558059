using System.Reflection;
using Cornerwright.Garage.Cars;

namespace Cornerwright.Garage.Files;

/// <summary>The invented car that comes with the program: demo/wagtail-estate.json, carried inside.</summary>
public static class DemoCar
{
    private const string Resource = "Cornerwright.Garage.wagtail-estate.json";

    /// <summary>The document's text, as it lies in demo/.</summary>
    public static string Text()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException("The demo car is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Name of the scan of its front left wheel arch: demo/wagtail-front-left.ply, invented and made by a program.</summary>
    public const string ScanName = "wagtail-front-left.ply";

    /// <summary>The scan's file, as it lies in demo/.</summary>
    public static Stream Scan() =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream("Cornerwright.Garage." + ScanName)
            ?? throw new InvalidOperationException("The demo scan is not in the assembly.");

    public static Car Read() => CarFile.Read(Text()).Value;
}
