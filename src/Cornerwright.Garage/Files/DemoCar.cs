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
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Resource) ?? throw new InvalidOperationException("The demo car is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    public static Car Read() => CarFile.Read(Text()).Value;
}
