var app = WebApplication.CreateBuilder(args).Build();
app.MapGet("/", () => "Cornerwright");
app.Run();

public partial class Program;
