using Cornerwright.Web.Hosting;

var app = CornerwrightHost.Build(args);
await CornerwrightHost.Prepare(app);
await app.RunAsync();

/// <summary>The entry point, public so that tests can host the whole application.</summary>
public partial class Program;
