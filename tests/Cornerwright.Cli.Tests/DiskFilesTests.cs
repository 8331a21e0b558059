using System.Text;
using Cornerwright.Cli.Edges;

namespace Cornerwright.Cli.Tests;

/// <summary>Real files: a new one never takes another's place, and one that is written over keeps what makes it the person's own.</summary>
public sealed class DiskFilesTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("cornerwright-files-");
    private readonly DiskFiles _files = new();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_new_file_is_made_and_nothing_is_left_beside_it()
    {
        string path = PathOf("new.json");
        Assert.Null(_files.WriteNew(path, "Größe\n"));
        Assert.Equal("Größe\n"u8.ToArray(), File.ReadAllBytes(path));
        Assert.Equal([path], Directory.GetFileSystemEntries(_folder.FullName));
    }

    [Fact]
    public void A_new_file_takes_nobodys_place()
    {
        string file = PathOf("mine.json"), folder = PathOf("folder"), link = PathOf("link"), dangling = PathOf("dangling");
        File.WriteAllText(file, "mine");
        Directory.CreateDirectory(folder);
        File.CreateSymbolicLink(link, file);
        File.CreateSymbolicLink(dangling, PathOf("nowhere"));
        foreach (string taken in new[] { file, folder, link, dangling })
        {
            Assert.Equal(taken, _files.WriteNew(taken, "ours")!.Given);
        }

        Assert.Equal("Something of that name is there already: choose another name, or move it away.", _files.WriteNew(file, "ours")!.Cure);
        Assert.Equal("mine", File.ReadAllText(file));
        Assert.Equal(new[] { dangling, file, folder, link }.Order(), Directory.GetFileSystemEntries(_folder.FullName).Order());
    }

    /// <summary>Looking first and writing then would let two of many win.</summary>
    [Fact]
    public void Of_many_who_make_the_same_new_file_one_succeeds_and_its_text_stays()
    {
        for (int round = 0; round < 20; round++)
        {
            string path = PathOf($"race-{round}.json");
            var winners = Enumerable.Range(0, 8).AsParallel().WithDegreeOfParallelism(8)
                .Where(i => _files.WriteNew(path, i.ToString(System.Globalization.CultureInfo.InvariantCulture)) is null).ToList();
            Assert.Equal(Assert.Single(winners).ToString(System.Globalization.CultureInfo.InvariantCulture), File.ReadAllText(path));
        }

        Assert.Equal(20, Directory.GetFileSystemEntries(_folder.FullName).Length);
    }

    /// <summary>
    /// Seen once: after "learn --use" a file that only its owner could read was open to all, and a link had become a file.
    /// </summary>
    [Fact]
    public void A_file_written_over_keeps_its_rights_and_a_link_stays_a_link()
    {
        string file = PathOf("mine.json"), link = PathOf("link");
        File.WriteAllText(file, "before");
        File.CreateSymbolicLink(link, file);
        const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        const UnixFileMode Shared = Own | UnixFileMode.GroupRead | UnixFileMode.GroupWrite;
        foreach (var mode in new[] { Own, Shared })
        {
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(file, mode);
            }

            string text = mode.ToString();
            Assert.Null(_files.WriteOver(link, text));
            Assert.Equal(text, File.ReadAllText(file, Encoding.UTF8));
            Assert.Equal(file, File.ResolveLinkTarget(link, returnFinalTarget: true)!.FullName);
            Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(file) == mode, $"{mode} was not kept.");
        }

        Assert.Equal(2, Directory.GetFileSystemEntries(_folder.FullName).Length);
    }

    [Fact]
    public void A_folder_is_not_written_over()
    {
        string folder = PathOf("folder");
        Directory.CreateDirectory(folder);
        Assert.Equal("the name of a new file", _files.WriteOver(folder, "ours")!.Allowed);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    private string PathOf(string name) => Path.Combine(_folder.FullName, name);
}
