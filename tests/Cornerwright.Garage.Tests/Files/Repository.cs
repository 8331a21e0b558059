namespace Cornerwright.Garage.Tests.Files;

/// <summary>Finds files of the source tree from a running test.</summary>
public static class Repository
{
    public static string PathOf(string relative)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new DirectoryNotFoundException("The tests run outside the source tree."), relative);
    }
}
