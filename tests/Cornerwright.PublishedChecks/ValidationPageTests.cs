namespace Cornerwright.PublishedChecks;

public sealed class ValidationPageTests
{
    // CORNERWRIGHT_WRITE_DOCS=1 rewrites the page; the run after that compares again.
    [Fact]
    public void The_committed_page_is_what_this_run_would_write()
    {
        string path = Path.Combine(Root(), "docs", "validation.md");
        string page = ValidationPage.Write();
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_WRITE_DOCS") == "1")
        {
            File.WriteAllText(path, page);
        }

        Assert.True(File.Exists(path), "docs/validation.md is missing: run with CORNERWRIGHT_WRITE_DOCS=1.");
        string committed = File.ReadAllText(path).ReplaceLineEndings("\n");
        string[] ours = page.ReplaceLineEndings("\n").Split('\n'), theirs = committed.Split('\n');
        for (int i = 0; i < Math.Min(ours.Length, theirs.Length); i++)
        {
            Assert.True(ours[i] == theirs[i], $"docs/validation.md line {i + 1} is out of date.\ncommitted: "
                + $"{theirs[i]}\nthis run:  {ours[i]}\nRun with CORNERWRIGHT_WRITE_DOCS=1.");
        }

        Assert.Equal(ours.Length, theirs.Length);
    }

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("Cornerwright.slnx is not above the tests.");
    }
}
